import type { Role } from "@/server/auth/session-user";

export interface NavigationItem {
  readonly href: string;
  readonly label: string;
}

const jobs = { href: "/jobs", label: "Jobs" };
const classes = { href: "/classes", label: "Classes" };
const scenarios = { href: "/scenarios", label: "Scenarios" };
const vehicles = { href: "/vehicles", label: "Vehicles" };
const candidates = { href: "/candidates", label: "Candidates" };
const people = { href: "/people", label: "People" };

/** What each role finds in the header. The first entry is the role's own place, where "/" leads. */
export const navigationOf: Readonly<Record<Role, readonly [NavigationItem, ...NavigationItem[]]>> = {
  learner: [jobs],
  instructor: [classes, scenarios, vehicles],
  manager: [candidates, scenarios],
  administrator: [people, classes, scenarios, vehicles],
};

export const homeOf = (role: Role): string => navigationOf[role][0].href;
