import type { ReactNode } from 'react';
import { VisitBar } from '../../../../components/visit/visit-bar';

interface VisitLayoutProps {
  readonly children: ReactNode;
  readonly params: Promise<{ id: string }>;
}

export default async function VisitLayout({ children, params }: VisitLayoutProps) {
  const { id } = await params;
  return (
    <>
      <VisitBar visitId={id} />
      {children}
    </>
  );
}
