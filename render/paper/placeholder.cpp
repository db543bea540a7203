#include <cairo.h>
namespace mullion { int placeholder_paper() { return CAIRO_VERSION; } }
