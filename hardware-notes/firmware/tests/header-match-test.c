#include "header-match.h"
#include "check.h"

void test_header_match(void) {
  const char *pattern = "SYSTem:ERRor[:NEXT]?";
  const char *const yes[] = {"SYST:ERR?", "SYSTEM:ERROR?", "syst:error?", "SYSTem:ERR:NEXT?", "system:error:next?"};
  const char *const no[] = {"",           "?",          "SYST",       "SYST:ERR",        "SYSTE:ERR?",  "SYS:ERR?",
                            "SYST:ERRO?", "SYST:ERR??", "SYST:ERR:?", "SYST:ERR:NEXTT?", "SYST::ERR?",  "SYSTEMS:ERR?",
                            "SYST:ERR:NEX?", "SYST ERR?", "SYST:ERRNEXT?", ":SYST:ERR?", "SYST:ERR?x"};
  for (unsigned i = 0; i < sizeof yes / sizeof yes[0]; i++) CHECK(header_matches(pattern, yes[i]));
  for (unsigned i = 0; i < sizeof no / sizeof no[0]; i++) CHECK(!header_matches(pattern, no[i]));
  CHECK(header_matches("*IDN?", "*idn?"));
  CHECK(!header_matches("*IDN?", "*IDN"));
  CHECK(!header_matches("*OPC", "*OPC?"));
  CHECK(header_matches("TRIGger[:SEQuence]:SOURce", "TRIG:SEQ:SOUR"));
  CHECK(header_matches("TRIGger[:SEQuence]:SOURce", "TRIG:SOUR"));
  CHECK(!header_matches("TRIGger[:SEQuence]:SOURce", "TRIG:SEQ"));
  CHECK(header_matches("OUTPut[:STATe]", "OUTP"));
  CHECK(header_matches("AZimuth", "az") && header_matches("AZimuth", "AZIMUTH") && !header_matches("AZimuth", "A"));
}
