import { runNextAuth } from "@/server/auth/run-next-auth";

export { runNextAuth as GET, runNextAuth as POST };
