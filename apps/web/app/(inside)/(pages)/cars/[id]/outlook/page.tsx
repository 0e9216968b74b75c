import type { Metadata } from 'next';
import { OutlookScreen } from './outlook-screen';

export const metadata: Metadata = { title: 'Drift and forecast' };

interface OutlookPageProps {
  readonly params: Promise<{ id: string }>;
  readonly searchParams: Promise<{ preset?: string | string[] }>;
}

export default async function OutlookPage({ params, searchParams }: OutlookPageProps) {
  const { id } = await params;
  const { preset } = await searchParams;
  return <OutlookScreen carId={id} asked={typeof preset === 'string' ? preset : null} />;
}
