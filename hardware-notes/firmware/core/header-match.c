#include "header-match.h"

static bool is_upper(char c) { return c >= 'A' && c <= 'Z'; }
static bool is_lower(char c) { return c >= 'a' && c <= 'z'; }
static char upper(char c) { return is_lower(c) ? (char)(c - 'a' + 'A') : c; }
static bool is_letter(char c) { return is_upper(upper(c)); }

/* One node: steps over it in both, true if the header has its short or whole form. */
static bool match_node(const FLASH char **pattern, const char **header) {
  const FLASH char *p = *pattern;
  const char *h = *header;
  while (is_letter(*p) && is_letter(*h) && upper(*p) == upper(*h)) p++, h++;
  if (is_letter(*h)) return false;
  if (is_upper(*p)) return false;                              /* shorter than the short form */
  if (is_lower(*p) && !is_upper(p[-1])) return false;          /* between short and whole form */
  while (is_lower(*p)) p++;
  *pattern = p;
  *header = h;
  return true;
}

bool header_matches(const FLASH char *pattern, const char *header) {
  for (;;) {
    if (*pattern == '[') {
      if (header_matches(pattern + 1, header)) return true;
      while (*pattern != ']') pattern++;
    }
    if (*pattern == ']') pattern++;
    else if (is_letter(*pattern)) {
      if (!match_node(&pattern, &header)) return false;
    } else if (*pattern != *header) return false;
    else if (*pattern == 0) return true;
    else pattern++, header++;
  }
}
