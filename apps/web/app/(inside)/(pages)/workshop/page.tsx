import type { Metadata } from 'next';
import { WorkshopScreen } from './workshop-screen';

export const metadata: Metadata = { title: 'Workshop' };

export default function WorkshopPage() {
  return <WorkshopScreen />;
}
