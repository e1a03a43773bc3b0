#pragma once
// A finished page put on its paper: moved, turned, and written larger or smaller for a printer that errs.

#include "page/document.h"

namespace kerfpacket::page {

/// Moves everything on the page.
void move(Page& page, Point by);

/// Turns the page a quarter turn to the left: what ran to the right runs up, and its height becomes its width.
void turn_left(Page& page);

/// Where a writer puts a point of the page: stretched by the page's correction about the page's middle.
Point corrected(const Page& page, Point point);

}  // namespace kerfpacket::page
