import type { LearnerView } from "@probeworthy/evaluation";

/** Titles of everything a log line can mention, looked up by id; an unknown id stands for itself. */
export interface Names {
  point(id: string): string;
  connector(id: string): string;
  fuse(id: string): string;
  module(id: string): string;
  place(id: string): string;
  conditionTitle(name: string): string;
  conditionValue(name: string, value: string | number): string;
}

type NamedView = Pick<LearnerView, "points" | "connectors" | "fuses" | "modules" | "places" | "conditions">;

export function createNames(view: NamedView): Names {
  const titles = (list: readonly { id: string; title: string }[]) => {
    const map = new Map(list.map((item) => [item.id, item.title]));
    return (id: string) => map.get(id) ?? id;
  };
  const withDesignator = (list: readonly { id: string; title: string }[]) => {
    const title = titles(list);
    return (id: string) => (title(id).startsWith(id) ? title(id) : `${id} ${title(id)}`);
  };
  const conditions = new Map(view.conditions.map((condition) => [condition.name, condition]));
  return {
    point: titles(view.points),
    connector: withDesignator(view.connectors),
    fuse: withDesignator(view.fuses),
    module: withDesignator(view.modules),
    place: withDesignator(view.places),
    conditionTitle: (name) => conditions.get(name)?.title ?? name,
    conditionValue: (name, value) => {
      const condition = conditions.get(name);
      if (condition?.kind === "number") return `${value} ${condition.unit}`.trim();
      return condition?.options.find((option) => option.value === value)?.title ?? String(value);
    },
  };
}
