/* SPDX-License-Identifier: MIT
 * The version of the program.
 */
#ifndef VERSION_H
#define VERSION_H

#define SEAMSTAMP_VERSION "0.1.0"

#endif
