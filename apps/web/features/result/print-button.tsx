"use client";

import { Button } from "@/components/button";

export function PrintButton() {
  return <Button onClick={() => window.print()}>Print</Button>;
}
