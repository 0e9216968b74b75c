import type { BoardCard } from '@pullbook/contracts';

export interface CardFilter {
  /** Words that must all stand somewhere on the card; empty for every card. */
  readonly text: string;
  /** Name of the tuner, '' for everybody's. */
  readonly tuner: string;
  readonly onlyAttention: boolean;
}

/** The cards that a person wants to see; plates match with and without their blanks. */
export function filterCards(cards: readonly BoardCard[], filter: CardFilter): readonly BoardCard[] {
  const words = filter.text
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  return cards.filter((card) => {
    if (filter.onlyAttention && !card.needsAttention) return false;
    if (filter.tuner !== '' && card.tunerName !== filter.tuner) return false;
    const page = pageOfCard(card);
    return words.every((word) => page.includes(word));
  });
}

function pageOfCard(card: BoardCard): string {
  const presets = card.presets.map((preset) => preset.name);
  const plate = `${card.plate} ${card.plate.replaceAll(/[\s-]/g, '')}`;
  return [
    plate,
    card.model,
    card.customerName,
    card.tunerName,
    card.bay,
    card.status,
    ...presets,
    String(card.number),
  ]
    .filter((text) => text !== null)
    .join(' ')
    .toLowerCase();
}
