import type { ChannelReading, UploadLook } from '@pullbook/contracts';
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { send } from '../../client/request';

type Layout = Pick<ChannelReading, 'delimiter' | 'decimalMark'>;

/** What the first lines of an uploaded file show, under a delimiter and decimal mark where a person chose them. */
export const useLookAtUpload = (uploadId: string, layout: Layout | null) =>
  useQuery({
    queryKey: ['upload-look', uploadId, layout],
    queryFn: () =>
      send<UploadLook>('POST', `/uploads/${uploadId}/look`, {
        body: { reading: layout === null ? null : { columns: [], ...layout } },
      }),
    placeholderData: keepPreviousData,
    staleTime: Infinity,
  });
