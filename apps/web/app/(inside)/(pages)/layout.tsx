import type { ReactNode } from 'react';
import { Shell } from '../../../components/shell/shell';

export default function PagesLayout({ children }: Readonly<{ children: ReactNode }>) {
  return <Shell>{children}</Shell>;
}
