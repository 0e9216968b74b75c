import type { MetadataRoute } from 'next';

/** What a device needs to know to install the dashboard beside its other programs. */
export default function manifest(): MetadataRoute.Manifest {
  return {
    name: 'Pullbook',
    short_name: 'Pullbook',
    description: 'The book in which a tuning workshop plans, records and proves every full-load pull.',
    id: '/board',
    start_url: '/board',
    scope: '/',
    display: 'standalone',
    background_color: '#f6f2e9',
    theme_color: '#f6f2e9',
    lang: 'en',
    icons: [
      { src: '/icons/icon-192.png', sizes: '192x192', type: 'image/png' },
      { src: '/icons/icon-512.png', sizes: '512x512', type: 'image/png' },
      { src: '/icons/icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
    ],
  };
}
