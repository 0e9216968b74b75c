import type { Metadata } from 'next';
import { EngineScreen } from './engine-screen';

export const metadata: Metadata = { title: 'Engine' };

export default async function EnginePage({ params }: Readonly<{ params: Promise<{ id: string }> }>) {
  const { id } = await params;
  return <EngineScreen carId={id} />;
}
