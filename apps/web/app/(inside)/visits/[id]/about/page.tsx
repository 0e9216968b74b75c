import type { Metadata } from 'next';
import { VisitAbout } from '../../../../../components/visit/visit-about';

export const metadata: Metadata = { title: 'About the visit' };

export default async function VisitAboutPage({ params }: Readonly<{ params: Promise<{ id: string }> }>) {
  const { id } = await params;
  return <VisitAbout visitId={id} />;
}
