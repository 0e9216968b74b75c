import type { Metadata } from 'next';
import { CustomerScreen } from './customer-screen';

export const metadata: Metadata = { title: 'Customer' };

export default async function CustomerPage({ params }: Readonly<{ params: Promise<{ id: string }> }>) {
  const { id } = await params;
  return <CustomerScreen customerId={id} />;
}
