import type { Metadata } from 'next';
import { CompareScreen } from './compare-screen';

export const metadata: Metadata = { title: 'Compare' };

interface ComparePageProps {
  readonly params: Promise<{ id: string }>;
  readonly searchParams: Promise<{ preset?: string }>;
}

export default async function ComparePage({ params, searchParams }: ComparePageProps) {
  const { id } = await params;
  const { preset } = await searchParams;
  return <CompareScreen carId={id} presetId={preset ?? null} />;
}
