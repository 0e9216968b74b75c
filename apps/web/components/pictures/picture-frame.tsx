'use client';

import { pictureCss, shapeClass, type Picture, type Shape } from '@pullbook/pictures';
import { useLayoutEffect, useRef, useState, type ReactNode } from 'react';
import styles from './pictures.module.css';

interface PictureFrameProps {
  /** Lays the picture out for a width in px. */
  readonly layout: (width: number) => Picture;
  readonly leastWidth: number;
  /** Height kept free before the width is known, so that nothing jumps. */
  readonly leastHeight: number;
  /** Offers the same figures as a table below. */
  readonly withTable?: boolean;
}

/** A picture of plain shapes as SVG, as wide as its place, with its text alternative and, if asked, its table. */
export function PictureFrame({ layout, leastWidth, leastHeight, withTable = false }: PictureFrameProps) {
  const place = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = place.current;
    if (element === null) return undefined;
    const measure = () => setWidth(Math.floor(element.clientWidth));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  const picture = width === 0 ? null : layout(Math.max(leastWidth, width));
  return (
    <>
      <style href="pullbook-pictures" precedence="default">
        {pictureCss}
      </style>
      <div
        ref={place}
        className={styles.frame}
        style={picture === null ? { minHeight: leastHeight } : undefined}
      >
        {picture === null ? null : (
          <svg
            className="picture"
            viewBox={`0 0 ${picture.width} ${picture.height}`}
            role="img"
            aria-label={picture.description}
          >
            {picture.shapes.map((shape, index) => (
              <DrawnShape key={index} shape={shape} />
            ))}
          </svg>
        )}
      </div>
      {withTable && picture !== null ? <PictureFigures picture={picture} /> : null}
    </>
  );
}

function PictureFigures({ picture }: Readonly<{ picture: Picture }>) {
  return (
    <details className={styles.figures}>
      <summary>The same as a table</summary>
      <div className="scroll" tabIndex={0} role="region" aria-label="Figures of the picture">
        <table>
          <thead>
            <tr>
              {picture.table.header.map((cell) => (
                <th key={cell} scope="col">
                  {cell}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {picture.table.rows.map((row, index) => (
              <tr key={index}>
                {row.map((cell, column) => (
                  <td key={column}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

function DrawnShape({ shape }: Readonly<{ shape: Shape }>): ReactNode {
  const className = shapeClass(shape);
  switch (shape.kind) {
    case 'line':
      return <line className={className} x1={shape.x1} y1={shape.y1} x2={shape.x2} y2={shape.y2} />;
    case 'rect':
      return (
        <rect
          className={className}
          x={shape.x}
          y={shape.y}
          width={shape.width}
          height={shape.height}
          rx={shape.cornerRadius}
        />
      );
    case 'circle':
      return <circle className={className} cx={shape.cx} cy={shape.cy} r={shape.r} />;
    case 'path':
      return <path className={className} d={shape.d} />;
    case 'text':
      return (
        <text
          className={className}
          x={shape.x}
          y={shape.y}
          fontSize={shape.size}
          textAnchor={shape.anchor}
          fontWeight={shape.weight === 'bold' ? 700 : 400}
          transform={shape.turn === 0 ? undefined : `rotate(${shape.turn} ${shape.x} ${shape.y})`}
        >
          {shape.text}
        </text>
      );
  }
}
