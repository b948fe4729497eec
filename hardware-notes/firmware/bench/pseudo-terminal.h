/* A pseudo-terminal under a name of one's own, which can be pulled out and plugged in again. Bench only. */
#ifndef PSEUDO_TERMINAL_H
#define PSEUDO_TERMINAL_H
#include <stdbool.h>

struct pty {
  int master; /* -1: unplugged */
  const char *link;
};
bool pty_plug(struct pty *pty);
void pty_unplug(struct pty *pty);
/* Whether somebody has the other end open. */
bool pty_taken(const struct pty *pty);

#endif
