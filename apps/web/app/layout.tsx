import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import './look.css';
import type { Metadata, Viewport } from 'next';
import type { ReactNode } from 'react';
import { themeScript } from '../components/theme/theme';
import { Providers } from './providers';

export const metadata: Metadata = {
  title: { default: 'Pullbook', template: '%s · Pullbook' },
  description: 'The book in which a tuning workshop plans, records and proves every full-load pull.',
  appleWebApp: { capable: true, title: 'Pullbook', statusBarStyle: 'default' },
  icons: { apple: '/icons/apple-touch-icon.png' },
};

export const viewport: Viewport = {
  width: 'device-width',
  initialScale: 1,
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#f6f2e9' },
    { media: '(prefers-color-scheme: dark)', color: '#10171a' },
  ],
};

export default function RootLayout({ children }: Readonly<{ children: ReactNode }>) {
  return (
    <html lang="en" suppressHydrationWarning>
      <head>
        <script dangerouslySetInnerHTML={{ __html: themeScript }} />
      </head>
      <body>
        <Providers>{children}</Providers>
      </body>
    </html>
  );
}
