/** What paper is printed with; every pair of ink and ground keeps its contrast in black and white. */
export const ink = {
  text: '#1b2225',
  soft: '#4d5756',
  rule: '#8b8676',
  faint: '#d5d0c3',
  petrol: '#0d5660',
  amber: '#8a4b00',
  mind: '#f3efe4',
  ground: '#ffffff',
} as const;
