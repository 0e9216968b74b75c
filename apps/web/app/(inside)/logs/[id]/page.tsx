import type { Metadata } from 'next';
import { LogScreen } from './log-screen';

export const metadata: Metadata = { title: 'Log' };

interface LogPageProps {
  readonly params: Promise<{ id: string }>;
  readonly searchParams: Promise<{ pull?: string | string[] }>;
}

export default async function LogPage({ params, searchParams }: LogPageProps) {
  const { id } = await params;
  const { pull } = await searchParams;
  return <LogScreen logId={id} asked={typeof pull === 'string' ? pull : null} />;
}
