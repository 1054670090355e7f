import { expect, it } from "vitest";
import { pathWords } from "./path-words";

it.each([
  ["pool.0.faults.1.at", "Candidate 1, fault 2, place"],
  ["complaints.2", "Wording 3"],
  ["limits.actions", "Actions allowed"],
  ["startConditions.roadSpeed", "Start, roadSpeed"],
  ["title", "Title"],
])("%s reads %s", (path, text) => {
  expect(pathWords(path)).toBe(text);
});
