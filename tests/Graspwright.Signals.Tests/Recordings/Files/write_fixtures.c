/* Writes the EDF+ and BDF+ fixtures with EDFlib, a program independent of ours (T. van Beelen, BSD licence).
 *
 *     gcc write_fixtures.c -ledf -o write_fixtures && ./write_fixtures
 *
 * Debian packages: gcc, libedf-dev. Samples follow the rule of rule(): tests repeat it. The samples are invented.
 */
#include <edflib.h>
#include <stdio.h>

static int rule(int signal, int i, int span) { return (int)((unsigned)(i * 7919 + signal * 104729 + i * i * 31) % (unsigned)(2 * span + 1)) - span; }

static int write_file(const char *name, int type, int low, int high)
{
    int file = edfopen_file_writeonly(name, type, 2), samples[250];
    if (file < 0) return 1;
    for (int s = 0; s < 2; s++) {
        edf_set_samplefrequency(file, s, 250);
        edf_set_digital_minimum(file, s, low);
        edf_set_digital_maximum(file, s, high);
        edf_set_physical_minimum(file, s, -3000);
        edf_set_physical_maximum(file, s, 3000);
        edf_set_label(file, s, s ? "hollow" : "ridge");
        edf_set_physical_dimension(file, s, "uV");
    }
    edf_set_startdatetime(file, 2020, 1, 2, 3, 4, 5);
    for (int r = 0; r < 3; r++)
        for (int s = 0; s < 2; s++) {
            for (int i = 0; i < 250; i++) samples[i] = rule(s, r * 250 + i, high);
            samples[0] = r == 0 ? low : samples[0];
            samples[1] = r == 0 ? high : samples[1];
            if (edfwrite_digital_samples(file, samples)) return 2;
        }
    edfwrite_annotation_utf8(file, 5000, 10000, "rest");
    edfwrite_annotation_utf8(file, 15000, 8000, "fist/arm overhead");
    return edfclose_file(file);
}

int main(void)
{
    return write_file("edflib.edf", EDFLIB_FILETYPE_EDFPLUS, -32768, 32767) | write_file("edflib.bdf", EDFLIB_FILETYPE_BDFPLUS, -8388608, 8388607);
}
