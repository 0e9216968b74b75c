import type { Log } from '@pullbook/contracts';
import { queryOptions } from '@tanstack/react-query';
import { get } from '../../client/request';

export const logQueryOptions = (id: string) =>
  queryOptions({ queryKey: ['logs', 'one', id], queryFn: ({ signal }) => get<Log>(`/logs/${id}`, signal) });
