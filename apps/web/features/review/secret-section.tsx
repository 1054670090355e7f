import { DefinitionList } from "@/components/definition-list";
import type { ReviewView } from "./review-view";

/** The side of the job the learner does not see. */
export function SecretSection({ secret }: { readonly secret: ReviewView["secret"] }) {
  return (
    <section
      aria-labelledby="review-secret"
      className="keep-together self-start border border-edge p-4 sm:p-6"
    >
      <h2 id="review-secret" className="mb-3">
        Behind the job
      </h2>
      <DefinitionList
        items={[
          {
            term: "True cause",
            value: (
              <>
                <strong>{secret.candidate}</strong>
                {secret.faults.map((fault) => (
                  <span key={fault} className="block font-mono text-sm">
                    {fault}
                  </span>
                ))}
                {secret.faults.length === 0 && (
                  <span className="block text-sm">Nothing is wrong with this car.</span>
                )}
              </>
            ),
          },
          {
            term: "Drawn",
            value: secret.conditions.length === 0 ? "nothing else" : secret.conditions.join("; "),
          },
          { term: "Scenario", value: `${secret.scenarioTitle}, version ${secret.scenarioVersion}` },
          { term: "Note for staff", value: secret.instructorNote === "" ? "none" : secret.instructorNote },
          {
            term: "Seed, engine",
            value: (
              <span className="font-mono text-sm break-all">
                {secret.seed}, {secret.engineVersion}
              </span>
            ),
          },
        ]}
      />
    </section>
  );
}
