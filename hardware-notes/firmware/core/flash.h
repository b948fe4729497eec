/* Constant data that must stay in program memory on an AVR, and is ordinary constant data elsewhere. */
#ifndef FLASH_H
#define FLASH_H

#ifdef __AVR__
#define FLASH __flash
#else
#define FLASH
#endif

/* A string literal in program memory. */
#define TEXT(literal)                                                                                        \
  (__extension__({                                                                                           \
    static const FLASH char text_[] = literal;                                                               \
    &text_[0];                                                                                               \
  }))

#endif
