import { describe, expect, it } from "vitest";
import { parsePeople } from "./class-input";

describe("a pasted list of people", () => {
  it.each([
    ["Nia Okonjo, nia@college.example", "Nia Okonjo", "nia@college.example"],
    ["nia@college.example;Nia Okonjo", "Nia Okonjo", "nia@college.example"],
    ["Okonjo\tNia\tNIA@college.example", "Okonjo Nia", "nia@college.example"],
    ['"Nia Okonjo" <nia@college.example>', "Nia Okonjo", "nia@college.example"],
    ["  nia@college.example  ", "", "nia@college.example"],
  ])("%s", (line, name, email) => {
    expect(parsePeople(line)).toEqual({ ok: true, people: [{ email, name }] });
  });

  it("names the line that has no address and takes none of the list", () => {
    const parsed = parsePeople("a@b.example\n\nTomas Vell\nnot@an@address");
    expect(parsed).toEqual({
      ok: false,
      problems: [
        'Line 3: "Tomas Vell" has no e-mail address that can be used.',
        'Line 4: "not@an@address" has no e-mail address that can be used.',
      ],
    });
  });
});
