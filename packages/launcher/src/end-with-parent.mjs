// Loaded into the web server before anything else. The launcher holds the other end of a channel; when it is gone,
// however it ended, the server ends too and frees the port and the data folder.

process.once("disconnect", () => {
  process.kill(process.pid, "SIGTERM");
  setTimeout(() => process.exit(1), 5000).unref();
});
// The channel alone must not keep the server running. (The types of this Node leave `channel` out.)
/** @type {{ channel?: { unref(): void } }} */ (process).channel?.unref();
