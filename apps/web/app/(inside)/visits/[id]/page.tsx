import type { Metadata } from 'next';
import { VisitScreen } from './visit-screen';

export const metadata: Metadata = { title: 'Visit' };

export default async function VisitPage({ params }: Readonly<{ params: Promise<{ id: string }> }>) {
  const { id } = await params;
  return <VisitScreen visitId={id} />;
}
