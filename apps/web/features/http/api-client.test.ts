import { afterEach, describe, expect, it, vi } from "vitest";
import { z } from "zod";
import { ApiProblem, callApi, postJson } from "./api-client";

const answer = z.object({ id: z.string() });
const answerWith = (response: Response | Error) => {
  const fetching = vi.fn(async () => {
    if (response instanceof Error) throw response;
    return response;
  });
  vi.stubGlobal("fetch", fetching);
  return fetching;
};

const refusal = () => postJson("/api/things", {}, answer).catch((error: unknown) => error);

afterEach(() => vi.unstubAllGlobals());

describe("callApi", () => {
  it("sends JSON and returns the checked answer", async () => {
    const fetching = answerWith(Response.json({ id: "t1", extra: 1 }));
    expect(await postJson("/api/things", { name: "x" }, answer)).toEqual({ id: "t1" });
    expect(fetching).toHaveBeenCalledWith(
      "/api/things",
      expect.objectContaining({ method: "POST", body: '{"name":"x"}', cache: "no-store" }),
    );
  });

  it("takes an answer without content", async () => {
    answerWith(new Response(null, { status: 204 }));
    expect(await callApi("/api/things", { method: "DELETE", answer: z.undefined() })).toBeUndefined();
  });

  it("throws what the server said, typed", async () => {
    answerWith(
      Response.json(
        {
          type: "/problems/refused",
          title: "That cannot be done now",
          status: 422,
          code: "refused",
          reason: "stale",
        },
        { status: 422, headers: { "content-type": "application/problem+json" } },
      ),
    );
    const error = await refusal();
    expect(error).toBeInstanceOf(ApiProblem);
    expect(error).toMatchObject({ code: "refused", problem: { reason: "stale", status: 422 } });
  });

  it("turns a page of HTML from something in between into a problem", async () => {
    answerWith(new Response("<h1>Bad gateway</h1>", { status: 502 }));
    expect(await refusal()).toMatchObject({ code: "internal", problem: { status: 502 } });
  });

  it("says so when the server cannot be reached", async () => {
    answerWith(new TypeError("fetch failed"));
    expect(await refusal()).toMatchObject({ code: "unavailable" });
  });

  it("lets a cancelled call be a cancelled call", async () => {
    answerWith(new DOMException("aborted", "AbortError"));
    expect(await refusal()).toMatchObject({ name: "AbortError" });
  });

  it("does not pass on an answer of the wrong shape", async () => {
    answerWith(Response.json({ id: 7 }));
    expect(await refusal()).toBeInstanceOf(z.ZodError);
  });
});
