"""Skies, hills, water and weather: the parts of which landscapes are put together."""

import math

from svg import mix, smooth


def ridge(sheet, base, height, rough=3):
    """The upper edge of a range of hills, from left to right."""
    waves = [(sheet.chance.uniform(0.6, 1.6) * (i + 1), sheet.chance.uniform(0, 6.3), 1 / (i + 1)) for i in range(rough)]
    def y(x):
        return base - height * sum(a * math.sin(f * x / sheet.w * 6.3 + p) for f, p, a in waves) / 2
    return [(x, y(x)) for x in range(-20, sheet.w + 41, 20)]


def ground(sheet, line, fill, **more):
    d = smooth(line) + f"L{sheet.w + 40} {sheet.h + 20}L-20 {sheet.h + 20}Z"
    sheet.path(d, fill, **more)


def sky(sheet, *colours, clouds=0, cloud="#ffffff"):
    sheet.all(sheet.gradient(*colours))
    soft = sheet.blur(min(sheet.w, sheet.h) / 80)
    for _ in range(clouds):
        x, y = sheet.chance.uniform(0, sheet.w), sheet.chance.uniform(0.06, 0.4) * sheet.h
        size = sheet.chance.uniform(0.05, 0.12) * min(sheet.w, sheet.h)
        sheet.begin(filter=soft, opacity=f"{sheet.chance.uniform(0.5, 0.9):.2f}")
        for i in range(7):
            sheet.ellipse(x + (i - 3) * size * 0.6, y + sheet.chance.uniform(-0.2, 0.2) * size,
                          size * sheet.chance.uniform(0.5, 1), size * sheet.chance.uniform(0.2, 0.36), cloud)
        sheet.end()


def sun(sheet, x, y, r, colour):
    x, y, r = x * sheet.w, y * sheet.h, r * sheet.w
    sheet.circle(x, y, r * 5, sheet.glow(colour), opacity=0.55)
    sheet.circle(x, y, r, mix(colour, "#ffffff", 0.55))


def hills(sheet, top, bottom, far, near, count, height=0.05, rough=3):
    """Ranges one behind the other, from `top` to `bottom` (shares of the height), fading into the far colour."""
    for i in range(count):
        share = i / max(1, count - 1)
        base = (top + (bottom - top) * share) * sheet.h
        colour = mix(far, near, share)
        fill = sheet.gradient(mix(colour, "#ffffff", 0.08), mix(colour, far, 0.35))
        ground(sheet, ridge(sheet, base, height * sheet.h * (0.6 + share), rough), fill)


def water(sheet, level, upper, lower, glint="#ffffff", glints=60, at=None):
    """Water from `level` down, with light on it, below `at` (a share of the width) the most."""
    y = level * sheet.h
    sheet.rect(0, y, sheet.w, sheet.h - y, sheet.gradient(upper, lower))
    for _ in range(glints):
        depth = sheet.chance.random() ** 1.6
        gy = y + depth * (sheet.h - y)
        spread = 0.06 + 0.3 * depth
        gx = sheet.w * (sheet.chance.gauss(at, spread) if at is not None else sheet.chance.random())
        length = sheet.w * (0.01 + 0.05 * depth) * sheet.chance.uniform(0.6, 1.6)
        sheet.ellipse(gx, gy, length, 0.6 + 2.2 * depth * sheet.h / 400, glint, opacity=f"{sheet.chance.uniform(0.15, 0.6):.2f}")


def fields(sheet, top, colours, rows=26):
    """A ploughed or flowering field that runs to a point on the horizon."""
    y0, vx = top * sheet.h, sheet.w * sheet.chance.uniform(0.35, 0.65)
    sheet.rect(0, y0, sheet.w, sheet.h - y0, colours[0])
    for i in range(rows):
        a, b = ((i - rows / 2 + d) * sheet.w / rows * 4 + vx for d in (0, 0.6))
        sheet.polygon([(vx, y0 - 3), (a, sheet.h), (b, sheet.h)], colours[1 + i % (len(colours) - 1)])


def grass(sheet, top, colours, count=260, length=0.09):
    """Blades of grass, taller toward the front."""
    for _ in range(count):
        depth = sheet.chance.random()
        x, y = sheet.chance.uniform(0, sheet.w), (top + (1.03 - top) * depth) * sheet.h
        tall = length * sheet.h * (0.35 + depth) * sheet.chance.uniform(0.6, 1.2)
        lean = tall * sheet.chance.uniform(-0.3, 0.5)
        sheet.line(f"M{x:.1f} {y:.1f}q{lean * 0.2:.1f} {-tall * 0.6:.1f} {lean:.1f} {-tall:.1f}",
                   sheet.chance.choice(colours), 0.7 + 1.3 * depth)


def flowers(sheet, top, colours, count=90, size=0.008):
    for _ in range(count):
        depth = sheet.chance.random()
        r = size * sheet.w * (0.4 + depth)
        x, y = sheet.chance.uniform(0, sheet.w), (top + (1 - top) * depth) * sheet.h
        sheet.ellipse(x, y, r, r * 0.8, sheet.chance.choice(colours))


def birds(sheet, count, colour="#3b4350", area=(0.1, 0.1, 0.9, 0.4)):
    for _ in range(count):
        x = sheet.chance.uniform(area[0], area[2]) * sheet.w
        y = sheet.chance.uniform(area[1], area[3]) * sheet.h
        s = sheet.w * sheet.chance.uniform(0.008, 0.02)
        sheet.line(f"M{x - s:.1f} {y - s * 0.3:.1f}q{s * 0.6:.1f} {-s * 0.5:.1f} {s:.1f} {s * 0.35:.1f}"
                   f"q{s * 0.4:.1f} {-s * 0.85:.1f} {s:.1f} {-s * 0.35:.1f}", colour, s / 6)


def stars(sheet, count, below=0.6):
    for _ in range(count):
        sheet.circle(sheet.chance.uniform(0, sheet.w), sheet.chance.uniform(0, below) * sheet.h,
                     sheet.chance.uniform(0.4, 1.3) * sheet.w / 400, "#fdf6dc", opacity=f"{sheet.chance.uniform(0.4, 1):.2f}")


def house(sheet, x, y, width, wall, roof, light="#f6d98a"):
    """A house whose left lower corner lies at (x, y)."""
    high, eaves = width * 0.62, width * 0.07
    sheet.rect(x, y - high, width, high, sheet.gradient(mix(wall, "#ffffff", 0.15), mix(wall, "#2a2430", 0.12), x=1, y=0))
    sheet.polygon([(x - eaves, y - high), (x + width * 0.2, y - high * 1.65), (x + width * 0.8, y - high * 1.65),
                   (x + width + eaves, y - high)], roof)
    sheet.rect(x + width * 0.68, y - high * 1.9, width * 0.1, high * 0.4, mix(roof, "#000000", 0.3))
    for i in (0.14, 0.66):
        sheet.rect(x + width * i, y - high * 0.72, width * 0.2, high * 0.36, light)
        sheet.rect(x + width * (i + 0.09), y - high * 0.72, width * 0.02, high * 0.36, wall)
    sheet.rect(x + width * 0.42, y - high * 0.6, width * 0.16, high * 0.6, mix(roof, wall, 0.2))


def boat(sheet, x, y, size, hull, sail):
    """A sailing boat on the water at (x, y)."""
    sheet.polygon([(x, y - size * 1.3), (x, y - size * 0.16), (x + size * 0.62, y - size * 0.16)], sail)
    sheet.polygon([(x - size * 0.04, y - size * 1.1), (x - size * 0.04, y - size * 0.16), (x - size * 0.42, y - size * 0.16)],
                  mix(sail, "#806040", 0.2))
    sheet.path(f"M{x - size * 0.6:.1f} {y - size * 0.1:.1f}H{x + size * 0.7:.1f}Q{x + size * 0.55:.1f} {y + size * 0.12:.1f} "
               f"{x + size * 0.4:.1f} {y + size * 0.12:.1f}H{x - size * 0.4:.1f}Z", hull)
    sheet.ellipse(x, y + size * 0.16, size * 0.7, size * 0.05, mix(hull, "#203040", 0.5), opacity=0.4)
