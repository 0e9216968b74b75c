import { paintTraces, type Paint } from './paint-traces';
import { face } from './scene';

const HEAD_PX = 58;
const SCALE = 2;
const LEAST_WIDTH = 720;

/** The traces as they are looked at, as a PNG with a head that says what they are of. */
export async function pictureOfTraces(paint: Omit<Paint, 'scale' | 'roomPx'>): Promise<Blob> {
  const canvas = document.createElement('canvas');
  const width = Math.max(LEAST_WIDTH, paint.width);
  paintTraces(canvas, { ...paint, width, scale: SCALE, roomPx: 0 }, HEAD_PX);
  const context = canvas.getContext('2d');
  if (context === null) throw new Error('this browser draws no pictures');
  const { theme, view } = paint;
  const { log, plate } = view.index;
  context.setTransform(SCALE, 0, 0, SCALE, 0, 0);
  context.fillStyle = theme.sheet;
  context.fillRect(0, 0, width, HEAD_PX);
  context.textAlign = 'start';
  context.textBaseline = 'alphabetic';
  context.fillStyle = theme.ink;
  context.font = face(18, 680);
  context.fillText(`${plate} · ${log.fileName}`, 12, 24);
  context.fillStyle = theme['ink-soft'];
  context.font = face(14);
  const { fromS, toS } = paint.sight.state.window;
  const stretch = `${fromS.toFixed(2)} to ${toS.toFixed(2)} s`;
  context.fillText(
    `${stretch} · taken in ${log.recordedAt.slice(0, 16).replace('T', ' ')} UTC · Pullbook`,
    12,
    46,
  );
  return new Promise((resolve, reject) => {
    canvas.toBlob(
      (blob) => (blob === null ? reject(new Error('the picture came out empty')) : resolve(blob)),
      'image/png',
    );
  });
}
