#include "pseudo-terminal.h"
#include <fcntl.h>
#include <poll.h>
#include <stdio.h>
#include <termios.h>
#include <unistd.h>
#ifdef __APPLE__
#include <util.h> /* not tried */
#else
#include <pty.h>
#endif

bool pty_plug(struct pty *pty) {
  int slave;
  char name[64];
  struct termios t;
  if (pty->master >= 0) return true;
  if (openpty(&pty->master, &slave, name, 0, 0)) return false;
  tcgetattr(slave, &t);
  cfmakeraw(&t);
  tcsetattr(slave, TCSANOW, &t);
  close(slave);
  fcntl(pty->master, F_SETFL, O_NONBLOCK);
  fcntl(pty->master, F_SETFD, FD_CLOEXEC);
  unlink(pty->link);
  if (symlink(name, pty->link) == 0) return true;
  perror(pty->link);
  return false;
}

void pty_unplug(struct pty *pty) {
  if (pty->master < 0) return;
  unlink(pty->link);
  close(pty->master);
  pty->master = -1;
}

bool pty_taken(const struct pty *pty) {
  struct pollfd f = {pty->master, POLLIN, 0};
  return pty->master >= 0 && poll(&f, 1, 0) >= 0 && !(f.revents & POLLHUP);
}
