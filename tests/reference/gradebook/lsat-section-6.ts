/**
 * Section 6 of the Law School Admission Test, 1000 candidates × 5 items, by pattern of answers.
 * Data: R. D. Bock and M. Lieberman 1970, as in the R packages psych (`bock`), ltm (`LSAT`) and mirt (`LSAT6`);
 * https://rstudio-pubs-static.s3.amazonaws.com (page 1049111). Patterns not listed did not occur.
 */
const patterns = `
00000 3    00001 6    00010 2    00011 11   00100 1    00101 1    00110 3    00111 4    01000 1    01001 8
01011 16   01101 3    01110 2    01111 15   10000 10   10001 29   10010 14   10011 81   10100 3    10101 28
10110 15   10111 80   11000 16   11001 56   11010 21   11011 173  11100 11   11101 61   11110 28   11111 298`;

export const lsatSection6: readonly (readonly (0 | 1)[])[] = [
  ...patterns.matchAll(/([01]{5}) (\d+)/g),
].flatMap(([, answers = "", count = "0"]) => {
  const row = [...answers].map((digit): 0 | 1 => (digit === "1" ? 1 : 0));
  return Array.from({ length: Number(count) }, () => row);
});
