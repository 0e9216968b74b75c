import type { LineLook } from '../../../../components/traces/line-look';

const WIDTH = 30;

/** A piece of a line as it is drawn, to find it again beside its name. */
export function LookSample({ look }: Readonly<{ look: LineLook }>) {
  return (
    <svg width={WIDTH} height="12" aria-hidden="true">
      <line
        x1="1"
        x2={WIDTH - 1}
        y1="6"
        y2="6"
        stroke={`var(--${look.tone})`}
        strokeWidth={look.width}
        strokeDasharray={look.dash.join(' ') || undefined}
      />
    </svg>
  );
}
