import { redirect } from "next/navigation";
import { homeOf } from "@/features/shell/navigation";
import { requireUser } from "@/server/auth/require-user";

/** "/" sends everybody to their own place. */
export default async function StartPage(): Promise<never> {
  const user = await requireUser();
  redirect(homeOf(user.role));
}
