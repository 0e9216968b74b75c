import type { MapPlaceOf } from '@pullbook/contracts';

const words = {
  inside: 'inside',
  'beyond-surge': '▲ beyond surge',
  'beyond-choke': '▲ beyond choke',
  'above-map': '▲ above the fastest line',
  'below-map': 'below the map',
} as const;

/** Where a point lies on the compressor map, in a word or two. */
export function sayPlace({ place }: Pick<MapPlaceOf, 'place'>): string {
  return words[place];
}
