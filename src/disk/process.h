#pragma once
// What the program settles with the system before it does anything.

namespace kerfpacket::disk {

/// Holds the standard streams that whoever started the program has closed, so that no file gets their numbers (what is
/// told there fails, as it should); takes as many open files as this user may have, for one is open a picture until all
/// are written; and tidies up when a signal ends the program (`tidy_up_on_signals`).
void settle_process();

}  // namespace kerfpacket::disk
