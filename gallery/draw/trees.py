"""Trees and plants."""

import math

from svg import mix, smooth


def trunk(sheet, x, y, height, width, colour):
    sheet.path(f"M{x - width:.1f} {y:.1f}Q{x - width * 0.4:.1f} {y - height * 0.3:.1f} {x - width * 0.4:.1f} {y - height:.1f}"
               f"H{x + width * 0.4:.1f}Q{x + width * 0.4:.1f} {y - height * 0.3:.1f} {x + width:.1f} {y:.1f}Z", colour)


def crown(sheet, x, y, rx, ry, colours, leaves=160, size=0.13):
    """A crown of many leaf clusters within an ellipse, lit from the upper left."""
    for i in range(leaves):
        angle, far = sheet.chance.uniform(0, 2 * math.pi), math.sqrt(sheet.chance.random())
        dx, dy = math.cos(angle) * far, math.sin(angle) * far
        light = max(0, min(1, 0.5 - 0.4 * dy - 0.25 * dx + sheet.chance.uniform(-0.2, 0.2)))
        shade = mix(colours[0], colours[1], light * i / leaves + light * 0.3 if light < 0.7 else light)
        r = size * rx * sheet.chance.uniform(0.6, 1.3)
        sheet.ellipse(x + dx * rx, y + dy * ry, r, r * 0.8, shade)


def bare(sheet, x, y, length, angle, width, colour, depth=7):
    """A tree without leaves: each branch forks."""
    x2, y2 = x + math.cos(angle) * length, y - math.sin(angle) * length
    sheet.line(f"M{x:.1f} {y:.1f}L{x2:.1f} {y2:.1f}", colour, width)
    if depth == 0:
        return [(x2, y2)]
    tips = []
    for side in (-1, 1):
        turn = side * sheet.chance.uniform(0.18, 0.55)
        tips += bare(sheet, x2, y2, length * sheet.chance.uniform(0.68, 0.86), angle + turn, width * 0.68, colour, depth - 1)
    return tips


def conifer(sheet, x, y, height, spread, colours):
    trunk(sheet, x, y, height * 0.2, height * 0.025, "#5a4334")
    tiers = 9
    for i in range(tiers):
        share = i / tiers
        base, wide = y - height * 0.1 - height * 0.9 * share * 0.92, spread * (1 - share)
        tip = base - height * 0.22
        sheet.path(f"M{x:.1f} {tip:.1f}Q{x - wide * 0.3:.1f} {base - height * 0.06:.1f} {x - wide:.1f} {base:.1f}"
                   f"Q{x:.1f} {base + height * 0.03:.1f} {x + wide:.1f} {base:.1f}Q{x + wide * 0.3:.1f} {base - height * 0.06:.1f} {x:.1f} {tip:.1f}Z",
                   sheet.gradient(mix(colours[0], colours[1], 0.35 + share * 0.5), colours[0], x=1, y=0))


def willow(sheet, x, y, height, colours):
    trunk(sheet, x, y, height * 0.55, height * 0.045, "#6b5540")
    for _ in range(150):
        angle = sheet.chance.uniform(-1.1, 1.1)
        sx, sy = x + math.sin(angle) * height * 0.28, y - height * 0.6 - math.cos(angle) * height * 0.3
        fall = height * sheet.chance.uniform(0.35, 0.75)
        out = math.sin(angle) * height * 0.24 + sheet.chance.uniform(-6, 6)
        sheet.line(f"M{sx:.1f} {sy:.1f}q{out * 0.7:.1f} {-fall * 0.15:.1f} {out:.1f} {fall:.1f}",
                   mix(colours[0], colours[1], sheet.chance.random()), 1.4)


def poplar(sheet, x, y, height, colours):
    trunk(sheet, x, y, height * 0.3, height * 0.02, "#6b5846")
    crown(sheet, x, y - height * 0.55, height * 0.12, height * 0.43, colours, 220, 0.3)


def birch(sheet, x, y, height, colours):
    trunk(sheet, x, y, height * 0.9, height * 0.022, "#efece4")
    for i in range(14):
        by = y - height * 0.85 * sheet.chance.random()
        sheet.line(f"M{x - height * 0.012:.1f} {by:.1f}h{height * 0.016:.1f}", "#4b4640", 1.5)
    crown(sheet, x, y - height * 0.68, height * 0.24, height * 0.32, colours, 190, 0.1)


def broad(sheet, x, y, height, colours, bark="#5d4636"):
    trunk(sheet, x, y, height * 0.5, height * 0.04, bark)
    for side in (-1, 1):
        sheet.line(f"M{x:.1f} {y - height * 0.34:.1f}q{side * height * 0.04:.1f} {-height * 0.14:.1f} {side * height * 0.18:.1f} {-height * 0.24:.1f}",
                   bark, height * 0.025)
    for dx, dy, size in ((-0.2, 0.56, 0.22), (0.2, 0.56, 0.22), (0, 0.7, 0.28), (0, 0.5, 0.2)):
        crown(sheet, x + dx * height, y - dy * height, size * height, size * height * 0.85, colours, 110, 0.17)


def leaf(sheet, x, y, length, angle, width, fill, vein=None):
    """A pointed leaf that grows from (x, y) at an angle in degrees, 0 to the right, 90 upward."""
    a = math.radians(angle)
    ux, uy, nx, ny = math.cos(a), -math.sin(a), math.sin(a), math.cos(a)
    tip = (x + ux * length, y + uy * length)
    sides = [(x + ux * length * 0.45 + s * nx * width, y + uy * length * 0.45 + s * ny * width) for s in (1, -1)]
    sheet.path(f"M{x:.1f} {y:.1f}Q{sides[0][0]:.1f} {sides[0][1]:.1f} {tip[0]:.1f} {tip[1]:.1f}"
               f"Q{sides[1][0]:.1f} {sides[1][1]:.1f} {x:.1f} {y:.1f}Z", fill)
    if vein:
        sheet.line(f"M{x:.1f} {y:.1f}L{x + ux * length * 0.9:.1f} {y + uy * length * 0.9:.1f}", vein, max(0.5, width * 0.05))


def stem(sheet, x, y, height, bend, colour, width=2.5):
    """A stem from (x, y) upward; returns the point and the direction at a share of it."""
    d = smooth([(x + bend * t * t, y - height * t) for t in (0, 0.25, 0.5, 0.75, 1)])
    sheet.line(d, colour, width)
    return lambda t: (x + bend * t * t, y - height * t, 90 - math.degrees(math.atan2(2 * bend * t, height)))


def bloom(sheet, x, y, r, petals, fill, heart="#e3b23c", turn=0, slim=0.5):
    for i in range(petals):
        leaf(sheet, x, y, r, turn + i * 360 / petals, r * slim, fill)
    sheet.circle(x, y, r * 0.22, heart)
    sheet.circle(x, y, r * 0.12, mix(heart, "#5a3410", 0.4))
