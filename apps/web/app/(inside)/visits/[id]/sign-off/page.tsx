import type { Metadata } from 'next';
import { SignOffScreen } from './sign-off-screen';

export const metadata: Metadata = { title: 'Sign-off' };

export default async function SignOffPage({ params }: Readonly<{ params: Promise<{ id: string }> }>) {
  const { id } = await params;
  return <SignOffScreen visitId={id} />;
}
