import type { Role } from "@probeworthy/database";

/** Invented people of invented organisations. `.example` is reserved and delivers no mail (RFC 2606). */
export interface DemoPerson {
  name: string;
  email: string;
  role: Role;
}

export interface DemoOrganisation {
  name: string;
  people: DemoPerson[];
}

const person = (name: string, domain: string, role: Role): DemoPerson => ({
  name,
  email: `${name.toLowerCase().replaceAll(" ", ".")}@${domain}`,
  role,
});

const learners = [
  "Nia Okonjo",
  "Tomas Vell",
  "Asha Perrin",
  "Luca Brandt",
  "Mei Tanner",
  "Jonah Reyes",
  "Freya Holm",
  "Idris Kane",
  "Petra Novak",
  "Sam Whitlock",
  "Rosa Almeida",
  "Viktor Lund",
];

export const college: DemoOrganisation = {
  name: "Larkmoor College",
  people: [
    person("Iris Fenwick", "larkmoor.example", "instructor"),
    person("Oskar Dale", "larkmoor.example", "administrator"),
    ...learners.map((name) => person(name, "larkmoor.example", "learner")),
  ],
};

export const repairShop: DemoOrganisation = {
  name: "Tinder Lane Garage",
  people: [person("Marta Quill", "tinderlane.example", "manager")],
};

/** One password per role. They are public: the demo is for trying out, never for real people. */
export const demoPasswords: Readonly<Record<Role, string>> = {
  learner: "copper-learner-1",
  instructor: "copper-instructor-1",
  manager: "copper-manager-1",
  administrator: "copper-administrator-1",
};

export interface DemoSignIn {
  role: Role;
  name: string;
  email: string;
  password: string;
}

/** One person per role, for the lines printed at start. */
export const demoSignIns: readonly DemoSignIn[] = (
  ["learner", "instructor", "manager", "administrator"] as const
).map((role) => {
  const found = [...college.people, ...repairShop.people].find((one) => one.role === role);
  if (found === undefined) throw new Error(`the demo has nobody in the role ${role}`);
  return { role, name: found.name, email: found.email, password: demoPasswords[role] };
});
