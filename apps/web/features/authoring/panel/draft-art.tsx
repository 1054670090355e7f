"use client";

import type { Sheet, SheetSymbol } from "@probeworthy/diagram";
import { memo } from "react";
import { ConductorCode, ConductorLine } from "@/features/diagram/conductor-line";
import { ConnectorBoundary } from "@/features/diagram/connector-boundary";
import { Primitives } from "@/features/diagram/primitives";
import styles from "@/features/diagram/wiring-diagram.module.css";
import { carried, type Following } from "./following";

const ignore = () => undefined;

interface DraftArtProps {
  readonly sheet: Sheet;
  /** What is being moved is drawn by itself. */
  readonly held?: SheetSymbol | undefined;
  readonly following?: Following | undefined;
}

/** Everything on the sheet that stands still while a part is dragged: drawn once, not with every step of the hand. */
export const DraftArt = memo(function DraftArt({ sheet, held, following }: DraftArtProps) {
  const away = new Set<unknown>([
    ...(following?.connectors ?? []),
    ...(following?.conductors ?? []).map(({ conductor }) => conductor),
  ]);
  return (
    <>
      {sheet.links.map((link) => (
        <polyline
          key={link.id}
          points={link.points.map(({ x, y }) => `${x},${y}`).join(" ")}
          className={styles.ink}
        />
      ))}
      {sheet.conductors.map((conductor) =>
        away.has(conductor) ? null : (
          <ConductorLine key={conductor.id} conductor={conductor} onHover={ignore} />
        ),
      )}
      {sheet.connectors.map((connector) =>
        away.has(connector) ? null : (
          <ConnectorBoundary
            key={`${connector.id} ${connector.from.x} ${connector.from.y}`}
            connector={connector}
            isApart={false}
          />
        ),
      )}
      {sheet.symbols.map((symbol) =>
        symbol === held ? null : <SymbolArt key={symbol.id} symbol={symbol} />,
      )}
      {(sheet.references ?? []).map((reference) => (
        <Primitives key={reference.id} list={reference.primitives} />
      ))}
      {(sheet.twists ?? []).map((twist) => (
        <Primitives key={twist.pair} list={twist.primitives} />
      ))}
      {sheet.conductors.map((conductor) =>
        away.has(conductor) ? null : <ConductorCode key={conductor.id} conductor={conductor} />,
      )}
    </>
  );
});

interface HeldPartProps {
  readonly symbol: SheetSymbol;
  readonly following: Following;
  readonly dx: number;
  readonly dy: number;
}

/** The part under the hand with its connectors, and its conductors drawn after it until they are routed anew. */
export function HeldPart({ symbol, following, dx, dy }: HeldPartProps) {
  return (
    <>
      {following.conductors.map(({ conductor, first, last }) => (
        <ConductorLine
          key={conductor.id}
          conductor={{ ...conductor, points: carried(conductor.points, { first, last }, dx, dy) }}
          onHover={ignore}
        />
      ))}
      <g transform={`translate(${dx} ${dy})`}>
        {following.connectors.map((connector) => (
          <ConnectorBoundary
            key={`${connector.id} ${connector.from.x} ${connector.from.y}`}
            connector={connector}
            isApart={false}
          />
        ))}
        <SymbolArt symbol={symbol} />
      </g>
    </>
  );
}

function SymbolArt({ symbol }: { readonly symbol: SheetSymbol }) {
  return (
    <g>
      <Primitives list={symbol.primitives} />
      <Primitives list={symbol.fitted ?? []} />
    </g>
  );
}
