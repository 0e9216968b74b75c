import type { Metadata } from 'next';
import { IntakeScreen } from './intake-screen';

export const metadata: Metadata = { title: 'Take in a car' };

export default function IntakePage() {
  return <IntakeScreen />;
}
