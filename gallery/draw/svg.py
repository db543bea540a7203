"""A sheet of SVG that is drawn on, piece by piece. Lengths are pixels; y grows downward."""

import random


def mix(a, b, share):
    """The colour that lies `share` of the way from a to b; colours are "#rrggbb"."""
    pairs = zip(*[[int(c[i:i + 2], 16) for i in (1, 3, 5)] for c in (a, b)])
    return "#" + "".join(f"{round(x + (y - x) * share):02x}" for x, y in pairs)


def points(line):
    return " ".join(f"{x:.1f},{y:.1f}" for x, y in line)


def smooth(line, closed=False):
    """A path through the points without corners (Catmull-Rom as cubic curves)."""
    p = list(line)
    p = [p[-1]] + p + p[:2] if closed else [p[0]] + p + [p[-1]]
    out = f"M{p[1][0]:.1f} {p[1][1]:.1f}"
    for a, b, c, d in zip(p, p[1:], p[2:], p[3:]):
        out += (f"C{b[0] + (c[0] - a[0]) / 6:.1f} {b[1] + (c[1] - a[1]) / 6:.1f} "
                f"{c[0] - (d[0] - b[0]) / 6:.1f} {c[1] - (d[1] - b[1]) / 6:.1f} {c[0]:.1f} {c[1]:.1f}")
    return out + ("Z" if closed else "")


class Sheet:
    """The drawing of one picture. Chance is seeded by the name: the same name, the same drawing."""

    def __init__(self, name, width, height):
        self.name, self.w, self.h = name, width, height
        self.chance = random.Random(name)
        self.defs, self.body, self.ids = [], [], 0

    def define(self, text):
        """Adds a definition; {id} in it stands for its new name, which is returned as a reference."""
        self.ids += 1
        self.defs.append(text.replace("{id}", f"d{self.ids}"))
        return f"url(#d{self.ids})"

    def add(self, text):
        self.body.append(text)

    def gradient(self, *stops, x=0, y=1):
        """A linear gradient over the shape that is filled, downward or in direction (x, y)."""
        rows = "".join(f'<stop offset="{i / (len(stops) - 1):.2f}" stop-color="{c}"/>' for i, c in enumerate(stops))
        return self.define(f'<linearGradient id="{{id}}" x2="{x}" y2="{y}">{rows}</linearGradient>')

    def glow(self, colour, edge=0):
        """A radial gradient from the colour to nothing (or to a faint rest at the edge)."""
        return self.define(f'<radialGradient id="{{id}}"><stop stop-color="{colour}"/>'
                           f'<stop offset="1" stop-color="{colour}" stop-opacity="{edge}"/></radialGradient>')

    def blur(self, amount):
        return self.define(f'<filter id="{{id}}" x="-50%" y="-50%" width="200%" height="200%">'
                           f'<feGaussianBlur stdDeviation="{amount}"/></filter>')

    def rect(self, x, y, w, h, fill, **more):
        self.add(f'<rect x="{x:.1f}" y="{y:.1f}" width="{w:.1f}" height="{h:.1f}" fill="{fill}"{attributes(more)}/>')

    def all(self, fill, **more):
        self.rect(0, 0, self.w, self.h, fill, **more)

    def ellipse(self, x, y, rx, ry, fill, **more):
        self.add(f'<ellipse cx="{x:.1f}" cy="{y:.1f}" rx="{rx:.1f}" ry="{ry:.1f}" fill="{fill}"{attributes(more)}/>')

    def circle(self, x, y, r, fill, **more):
        self.ellipse(x, y, r, r, fill, **more)

    def ring(self, x, y, r, colour, width, **more):
        self.circle(x, y, r, "none", stroke=colour, stroke_width=width, **more)

    def polygon(self, line, fill, **more):
        self.add(f'<polygon points="{points(line)}" fill="{fill}"{attributes(more)}/>')

    def path(self, d, fill="none", **more):
        self.add(f'<path d="{d}" fill="{fill}"{attributes(more)}/>')

    def line(self, d, colour, width, **more):
        self.path(d, stroke=colour, stroke_width=f"{width:.2f}", stroke_linecap="round", stroke_linejoin="round", **more)

    def text(self, x, y, words, size, fill, font="DejaVu Serif", anchor="middle", **more):
        self.add(f'<text x="{x:.1f}" y="{y:.1f}" font-family="{font}" font-size="{size:.1f}" '
                 f'text-anchor="{anchor}" fill="{fill}"{attributes(more)}>{words}</text>')

    def begin(self, **more):
        self.add(f"<g{attributes(more)}>")

    def end(self):
        self.add("</g>")

    def texture(self, colour="#000000", strength=0.12, grain=0.8, stretch=1):
        """Lays the mottle of paper, paint or film over all that is drawn so far."""
        r, g, b = (int(colour[i:i + 2], 16) / 255 for i in (1, 3, 5))
        seed = self.chance.randrange(999)
        mottle = self.define(
            f'<filter id="{{id}}" x="0" y="0" width="1" height="1"><feTurbulence type="fractalNoise" '
            f'baseFrequency="{grain} {grain * stretch}" numOctaves="3" seed="{seed}"/>'
            f'<feColorMatrix values="0 0 0 0 {r:.2f} 0 0 0 0 {g:.2f} 0 0 0 0 {b:.2f} 0 0 0 {strength * 3:.2f} {-strength:.2f}"/></filter>')
        self.add(f'<rect width="{self.w}" height="{self.h}" filter="{mottle}"/>')

    def vignette(self, strength=0.35):
        shade = self.define(f'<radialGradient id="{{id}}" r="0.75"><stop offset="0.55" stop-opacity="0"/>'
                            f'<stop offset="1" stop-opacity="{strength}"/></radialGradient>')
        self.all(shade)

    def written(self):
        return (f'<svg xmlns="http://www.w3.org/2000/svg" width="{self.w}" height="{self.h}" '
                f'viewBox="0 0 {self.w} {self.h}">\n<defs>{"".join(self.defs)}</defs>\n' + "\n".join(self.body) + "\n</svg>\n")


def attributes(more):
    return "".join(f' {name.replace("_", "-")}="{value}"' for name, value in more.items())
