import type { Metadata } from 'next';
import { CarsScreen } from './cars-screen';

export const metadata: Metadata = { title: 'Cars' };

export default function CarsPage() {
  return <CarsScreen />;
}
