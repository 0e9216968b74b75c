'use client';

import { useLive } from './live';
import { Tag } from '../marks/marks';

/** Says only when the line is broken: then figures may be old, and changes wait. */
export function LineState() {
  const isLive = useLive();
  return <span role="status">{isLive ? null : <Tag shape="◐">no line to the server</Tag>}</span>;
}
