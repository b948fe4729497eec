/* A few words to write the core's tests with. */
#ifndef CHECK_H
#define CHECK_H
#include <stdbool.h>

/* Each counts one check; a failed one is printed and the run fails at its end. */
void check(bool true_, const char *what, const char *file, int line);
void check_text(const char *got, const char *wanted, const char *file, int line);
#define CHECK(condition) check(condition, #condition, __FILE__, __LINE__)
#define CHECK_TEXT(got, wanted) check_text(got, wanted, __FILE__, __LINE__)
/* Sends one message and compares everything the head answered ("" for nothing); the LF is left out of `wanted`. */
#define ASK(message, wanted) check_text(board_ask(message), wanted, __FILE__, __LINE__)

void test_number(void);
void test_crc16(void);
void test_header_match(void);
void test_program_line(void);
void test_errors(void);
void test_commands(void);
void test_status(void);
void test_frame(void);
void test_trigger(void);
void test_channel_store(void);
void test_thermistor(void);
void test_random_bytes(void);

#endif
