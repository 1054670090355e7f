import type { Position, Sheet } from "@probeworthy/diagram";
import clsx from "clsx";
import type { Potentials } from "@/features/potentials/potentials-view";
import { ConductorCode, ConductorLine } from "./conductor-line";
import { ConnectorBoundary } from "./connector-boundary";
import { PotentialFigures, PotentialLine } from "./potential-line";
import { Primitives } from "./primitives";
import { SheetFrame } from "./sheet-frame";
import { ownersOnPath } from "./trace";
import styles from "./wiring-diagram.module.css";

export interface SheetArtProps {
  readonly sheet: Sheet;
  /** Connectors that are unplugged and fuses out of their holder. */
  readonly apart?: ReadonlySet<string>;
  /** Conductors of the path that is traced: everything else steps back. */
  readonly traced?: ReadonlySet<string> | undefined;
  /** Colours by computed potential instead of insulation. */
  readonly potentials?: Potentials | undefined;
  readonly onHover?: (conductor: string, place: Position | undefined) => void;
  readonly onConductor?: ((conductor: string) => void) | undefined;
}

const none: ReadonlySet<string> = new Set();

/** Everything that is drawn on a sheet, without anything that can be pressed: for the viewer and for paper. */
export function SheetArt(props: SheetArtProps) {
  const { sheet, apart = none, traced, potentials, onHover, onConductor } = props;
  const owners = traced === undefined ? undefined : ownersOnPath(sheet, traced);
  const stepsBack = (isOn: boolean | undefined) => (isOn === false ? styles.stepsBack : undefined);
  return (
    <>
      <SheetFrame sheet={sheet} />
      <g className={stepsBack(traced === undefined)}>
        {sheet.links.map((link) => (
          <polyline
            key={link.id}
            points={link.points.map(({ x, y }) => `${x},${y}`).join(" ")}
            className={styles.ink}
          />
        ))}
      </g>
      {sheet.conductors.map((conductor) => {
        const at = potentials?.conductors[conductor.id];
        return (
          <g
            key={conductor.id}
            className={clsx(stepsBack(traced?.has(conductor.id)), traced?.has(conductor.id) && styles.traced)}
          >
            {potentials === undefined || at === undefined ? (
              <ConductorLine
                conductor={conductor}
                onHover={onHover && ((place) => onHover(conductor.id, place))}
                onPress={onConductor && (() => onConductor(conductor.id))}
              />
            ) : (
              <PotentialLine
                conductor={conductor}
                at={at}
                supplyVolts={potentials.supplyVolts}
                onHover={onHover && ((place) => onHover(conductor.id, place))}
              />
            )}
          </g>
        );
      })}
      {sheet.twists?.map((twist) => (
        <g key={twist.pair} className={stepsBack(traced && twist.conductors.some((id) => traced.has(id)))}>
          <Primitives list={twist.primitives} />
        </g>
      ))}
      {sheet.connectors.map((connector) => (
        <g
          key={`${connector.id} ${connector.from.x} ${connector.from.y}`}
          className={stepsBack(owners?.has(connector.id))}
        >
          <ConnectorBoundary connector={connector} isApart={apart.has(connector.id)} />
        </g>
      ))}
      {sheet.symbols.map((symbol) => (
        <g key={symbol.id} data-symbol={symbol.id} className={stepsBack(owners?.has(symbol.designator))}>
          <Primitives list={symbol.primitives} />
          <Primitives list={(apart.has(symbol.id) ? symbol.pulled : symbol.fitted) ?? []} />
        </g>
      ))}
      {sheet.references?.map((reference) => (
        <g
          key={reference.id}
          className={stepsBack(
            traced && reference.conductor !== undefined && traced.has(reference.conductor),
          )}
        >
          <Primitives list={reference.primitives} />
        </g>
      ))}
      {sheet.conductors.map((conductor) => {
        const at = potentials?.conductors[conductor.id];
        return (
          <g key={conductor.id} className={stepsBack(traced?.has(conductor.id))}>
            {at === undefined ? (
              <ConductorCode conductor={conductor} />
            ) : (
              <PotentialFigures conductor={conductor} at={at} />
            )}
          </g>
        );
      })}
    </>
  );
}
