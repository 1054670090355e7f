import { expect, it } from "vitest";
import { sentence } from "./messages";
import { pathWords } from "./path-words";

const draft = {
  components: [
    { id: "F1", kind: "fuse" },
    { id: "A1", kind: "module" },
  ],
  systems: [{ id: "lights" }],
};

it.each([
  ["components[0].ratingAmps", "Component F1, rating"],
  ["components[1].supply.sleep.stayAwake", "Component A1, supply, falls asleep, stays awake while"],
  ["components[1].outputs[2].onOhms", "Component A1, output 3, resistance while on"],
  ["conductors[4].from", "Conductor 5, from"],
  ["systems[0].chart[0].point", "System lights, row 1, point"],
  ["systems", "Systems"],
  ["title", "Vehicle, title"],
])("%s reads %s", (path, words) => {
  expect(pathWords(draft, path)).toBe(words);
});

it.each([
  ["Invalid input: expected number, received undefined", "Fill this in."],
  ["Invalid input: expected number, received string", "Write a number."],
  ["Too small: expected array to have >=1 items", "Add at least one."],
  ["Too small: expected number to be >0", "More than 0."],
  ["the wire ends nowhere", "The wire ends nowhere."],
])("%s is said %s", (message, words) => {
  expect(sentence(message)).toBe(words);
});
