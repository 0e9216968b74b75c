import type { Metadata } from 'next';
import { ControllersScreen } from './controllers-screen';

export const metadata: Metadata = { title: 'Controllers' };

export default function ControllersPage() {
  return <ControllersScreen />;
}
