import type { ReactNode } from 'react';
import { Gate } from '../../components/shell/gate';

export default function InsideLayout({ children }: Readonly<{ children: ReactNode }>) {
  return <Gate>{children}</Gate>;
}
