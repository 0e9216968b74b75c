import type { Metadata } from 'next';
import { CarScreen } from './car-screen';

export const metadata: Metadata = { title: 'Car' };

export default async function CarPage({ params }: Readonly<{ params: Promise<{ id: string }> }>) {
  const { id } = await params;
  return <CarScreen carId={id} />;
}
