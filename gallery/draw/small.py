"""Stamps, tiles, moons and portraits: pictures of which a mat holds many."""

import math

from album import picture
from land import boat, hills, sky, sun, water
from paper import crest
from svg import mix
from trees import bloom, broad, conifer, leaf


def perforated(sheet, paper, margin):
    """The paper of a stamp with its perforations, on the board that shows around it."""
    w, h = sheet.w, sheet.h
    sheet.rect(0, 0, w, h, paper)
    for i in range(round(w / 10) + 1):
        for y in (0, h):
            sheet.circle(i * w / round(w / 10), y, 3, "#d9d2c2")
    for i in range(round(h / 10) + 1):
        for x in (0, w):
            sheet.circle(x, i * h / round(h / 10), 3, "#d9d2c2")
    sheet.begin(transform=f"translate({margin} {margin}) scale({(w - 2 * margin) / 200:.4f} {(h - 2 * margin) / 240:.4f})")


def lighthouse(sheet, ink):
    for i in range(5):
        sheet.line(f"M0 {150 + i * 16}q25 -9 50 0t50 0t50 0t50 0", mix(ink, "#ffffff", 0.4), 3)
    sheet.polygon([(86, 70), (114, 70), (124, 170), (76, 170)], "#fdf8ec")
    for y in (84, 116, 148):
        sheet.rect(80, y, 40, 13, ink)
    sheet.rect(88, 48, 24, 22, "#ffe9a0")
    sheet.polygon([(82, 48), (100, 32), (118, 48)], ink)
    sheet.polygon([(112, 54), (200, 30), (200, 84), (112, 64)], "#ffe9a0", opacity=0.5)


def fish(sheet, ink):
    sheet.path("M30 120C60 70 130 70 160 116L190 90V150L160 126C130 168 60 168 30 120Z", ink)
    for i in range(4):
        sheet.line(f"M{84 + i * 18} 96q14 24 0 48", mix(ink, "#ffffff", 0.5), 3)
    sheet.circle(58, 112, 7, "#fdf8ec")
    sheet.circle(58, 112, 3, "#202020")


def kite(sheet, ink):
    sheet.polygon([(100, 40), (150, 100), (100, 175), (50, 100)], ink)
    sheet.polygon([(100, 40), (150, 100), (100, 100)], mix(ink, "#ffffff", 0.4))
    sheet.polygon([(50, 100), (100, 100), (100, 175)], mix(ink, "#000000", 0.25))
    sheet.line("M100 175q-20 20 0 32t14 24", ink, 3)


def flower(sheet, ink):
    sheet.line("M100 190Q96 150 100 110", "#4f7a48", 5)
    leaf(sheet, 100, 180, 56, 40, 16, "#5f8f52")
    leaf(sheet, 100, 170, 56, 140, 16, "#5f8f52")
    bloom(sheet, 100, 92, 54, 9, ink, turn=10, slim=0.34)


def bell(sheet, ink):
    sheet.path("M60 160C72 140 66 70 100 58C134 70 128 140 140 160Z", ink)
    sheet.rect(50, 158, 100, 10, mix(ink, "#000000", 0.25))
    sheet.circle(100, 176, 10, mix(ink, "#000000", 0.4))
    sheet.ring(100, 50, 9, ink, 5)


def star(sheet, ink):
    points = [(100 + (64 if i % 2 == 0 else 26) * math.sin(i * math.pi / 5), 112 - (64 if i % 2 == 0 else 26) * math.cos(i * math.pi / 5)) for i in range(10)]
    sheet.polygon(points, ink)
    for i in range(0, 10, 2):
        sheet.polygon([(100, 112), points[i], points[i + 1]], mix(ink, "#ffffff", 0.35))


def wheel(sheet, ink):
    sheet.ring(100, 112, 54, ink, 10)
    for i in range(8):
        sheet.line("M100 112V38", ink, 6, transform=f"rotate({i * 45} 100 112)")
    sheet.circle(100, 112, 14, mix(ink, "#ffffff", 0.4))


STAMPS = [("pine", lambda s, i: conifer(s, 100, 190, 150, 50, (mix(i, "#000000", 0.2), mix(i, "#ffffff", 0.4))), "#2f6a4c", "#e4efe0"),
          ("light", lighthouse, "#b03a2e", "#cfe3ea"), ("fish", fish, "#2f5f8a", "#e3eef4"),
          ("kite", kite, "#d07a2c", "#e8f0f6"), ("daisy", flower, "#8a4f9c", "#f4ecd8"),
          ("boat", lambda s, i: (s.rect(0, 148, 200, 60, "#7fb4c4"), boat(s, 96, 160, 74, i, "#fdf8ec")), "#8a3030", "#f4e3c4"),
          ("bell", bell, "#b0842c", "#f6eeda"), ("star", star, "#3c4f94", "#e6e9f4"),
          ("oak", lambda s, i: broad(s, 100, 186, 140, (mix(i, "#000000", 0.2), mix(i, "#ffffff", 0.4))), "#6a7f34", "#f0ecd4"),
          ("wheel", wheel, "#5a4636", "#ece4d2"), ("crest", lambda s, i: crest(s, 100, 108, 50, i, "#f6ecd0"), "#7a2f4c", "#f4e6e2"),
          ("sun", lambda s, i: (sun_rays(s, i)), "#e08a2c", "#fbeecb")]


def sun_rays(sheet, ink):
    for i in range(16):
        sheet.polygon([(94, 60), (106, 60), (100, 30)], ink, transform=f"rotate({i * 22.5} 100 112)")
    sheet.circle(100, 112, 44, ink)
    sheet.circle(100, 112, 34, mix(ink, "#ffffff", 0.35))


def stamp(index, draw_motif, ink, field):
    def draw(sheet):
        perforated(sheet, "#faf6ea", 14)
        sheet.rect(0, 0, 200, 240, sheet.gradient(field, mix(field, ink, 0.22)))
        draw_motif(sheet, ink)
        sheet.rect(0, 0, 200, 240, "none", stroke=ink, stroke_width=5)
        sheet.rect(0, 206, 200, 34, ink)
        sheet.text(14, 231, "SORREL", 22, "#fdf8ec", "Lato", "start", letter_spacing=3)
        sheet.text(188, 231, str(2 + index % 4 * 3), 26, "#fdf8ec", "Lato", "end", font_weight="bold")
        sheet.end()
    return draw


for number, (stamp_name, motif, stamp_ink, stamp_field) in enumerate(STAMPS):
    picture(f"stamp-{stamp_name}.png", 150, 180)(stamp(number, motif, stamp_ink, stamp_field))


def moon(name, lit):
    """The moon with a share of it lit, from the right where positive."""
    def draw(sheet):
        sheet.all("#0e1430")
        for _ in range(40):
            sheet.circle(sheet.chance.uniform(0, 260), sheet.chance.uniform(0, 260), sheet.chance.uniform(0.4, 1.2), "#dfe4f4", opacity=0.7)
        sheet.circle(130, 130, 125, sheet.glow("#8fa0d0"), opacity=0.35)
        sheet.circle(130, 130, 92, "#1c2444")
        side, bulge = (1 if lit > 0 else 0), 92 * abs(1 - 2 * abs(lit))
        sweep = side if abs(lit) > 0.5 else 1 - side
        shape = sheet.define(f'<clipPath id="{{id}}"><path d="M130 38A92 92 0 0 {side} 130 222A{bulge:.1f} 92 0 0 {sweep} 130 38Z"/></clipPath>')
        sheet.begin(clip_path=shape)
        sheet.circle(130, 130, 92, sheet.gradient("#fbf4dc", "#e4dcc4", "#c9c0a8", x=1, y=0.6))
        for x, y, r in ((96, 100, 26), (130, 84, 18), (160, 110, 22), (112, 140, 20), (170, 160, 12), (90, 170, 10), (140, 190, 9), (70, 130, 12)):
            sheet.circle(x, y, r, "#b0a890", opacity=0.5)
            sheet.circle(x + 2, y + 2, r * 0.8, "#c8c0a8", opacity=0.5)
        sheet.end()
    picture(f"moon-{name}.jpg", 260, 260)(draw)


for moon_name, share in (("young", 0.16), ("first", 0.5), ("full", 1), ("last", -0.5), ("old", -0.16)):
    moon(moon_name, share)


def tile(name, colours):
    def draw(sheet):
        dark, mid, light, accent = colours
        sheet.all(light)
        for i in range(8):
            sheet.begin(transform=f"rotate({i * 45} 150 150)")
            leaf(sheet, 150, 150, 138, 90, 44, mid if i % 2 else dark, light)
            leaf(sheet, 150, 150, 92, 112, 22, accent)
            sheet.circle(150, 22, 9, dark)
            sheet.end()
        for x in (0, 300):
            for y in (0, 300):
                for r, c in ((64, dark), (52, light), (42, mid), (22, accent)):
                    sheet.circle(x, y, r, c)
        bloom(sheet, 150, 150, 40, 8, light, accent, 22)
        sheet.texture("#ffffff", 0.16, 0.25)
        sheet.ellipse(90, 80, 90, 60, sheet.glow("#ffffff"), opacity=0.35)
        sheet.rect(1, 1, 298, 298, "none", stroke=mix(dark, "#000000", 0.3), stroke_width=3)
    picture(f"tile-{name}.jpg", 300, 300)(draw)


tile("indigo", ("#22407c", "#4f7fb4", "#f2efe4", "#d9a03c"))
tile("saffron", ("#8a3a24", "#d9822c", "#f6ecd6", "#3c7a74"))


@picture("school-portrait.jpg", 350, 490)
def school_portrait(sheet):
    """A stand-in for the pupils: the school's owl in its blazer."""
    sheet.all(sheet.gradient("#6f8fb0", "#a9c0d4", "#6c86a4"))
    sheet.circle(175, 190, 240, sheet.glow("#e8f1f6"), opacity=0.8)
    sheet.texture("#20364c", 0.22, 0.012)
    sheet.path("M20 490C22 400 60 372 130 352H220C290 372 328 400 330 490Z", sheet.gradient("#2c4a3c", "#1c3028"))
    sheet.path("M130 352L175 440L220 352L196 330H154Z", "#f6f4ec")
    sheet.polygon([(166, 372), (184, 372), (192, 480), (175, 490), (158, 480)], sheet.gradient("#b03a34", "#7c2420"))
    for side in (1, -1):
        sheet.path("M175 452L226 350L256 366L236 410L250 420L186 490H175Z", "#26433a", stroke="#16281f", stroke_width=1.5,
                   transform=f"translate(175 0) scale({side} 1) translate(-175 0)")
    crest(sheet, 262, 436, 17, "#7c2420", "#f0e2b4")
    for side in (1, -1):
        sheet.begin(transform=f"translate(175 0) scale({side} 1)")
        sheet.polygon([(22, 150), (84, 92), (92, 190)], "#6a4c34")
        sheet.end()
    sheet.ellipse(175, 226, 98, 104, sheet.gradient("#8f6c4a", "#6a4c34"))
    for _ in range(170):
        x, y = sheet.chance.gauss(175, 46), sheet.chance.gauss(230, 46)
        if (x - 175) ** 2 / 90 ** 2 + (y - 226) ** 2 / 96 ** 2 < 1:
            leaf(sheet, x, y, 17, 270 + (x - 175) * 0.3, 4, mix("#5a3e2a", "#b8926a", sheet.chance.random()))
    for x in (134, 216):
        sheet.circle(x, 214, 50, "#e4cfa8")
        for i in range(28):
            sheet.line(f"M{x} 182V168", "#c4a478", 2, transform=f"rotate({i * 360 / 28:.1f} {x} 214)")
        sheet.circle(x, 214, 29, "#f2b83c")
        sheet.circle(x, 214, 19, "#1c1814")
        sheet.circle(x - 7, 206, 6, "#ffffff")
    sheet.path("M175 236Q196 252 175 286Q154 252 175 236Z", sheet.gradient("#d9a04c", "#9a6420"))


def house_number(name, wall, door, air):
    def draw(sheet):
        sky(sheet, *air, clouds=2)
        for i in range(3):
            x = 20 + i * 110
            high = (210, 240, 196)[i]
            tone = wall[i]
            sheet.rect(x, 330 - high, 104, high, sheet.gradient(mix(tone, "#ffffff", 0.15), tone, x=1, y=0))
            sheet.polygon([(x - 4, 332 - high), (x + 52, 276 - high), (x + 108, 332 - high)], mix(tone, "#402018", 0.55))
            for row in range(2):
                for col in range(2):
                    sheet.rect(x + 16 + col * 42, 352 - high + row * 58, 30, 38, "#fbf7ea")
                    sheet.rect(x + 19 + col * 42, 355 - high + row * 58, 24, 32, sheet.gradient("#5f7c94", "#a9c4d0"))
            sheet.rect(x + 34, 262, 36, 68, door[i])
            sheet.circle(x + 63, 298, 2.4, "#e8c860")
        sheet.rect(0, 330, 360, 24, "#b8ac98")
        water(sheet, 0.74, "#8fb4c0", "#3f6c80", glints=70)
        sheet.texture("#403828", 0.1, 0.6)
    picture(f"quay-{name}.jpg", 360, 480)(draw)


house_number("east", ("#e0b07c", "#8fb0a4", "#d98c7c"), ("#2c4a5c", "#8a3c30", "#3c5c44"), ("#8fbcd8", "#eef2ec"))
house_number("west", ("#c8d0b0", "#e6c884", "#a4b4cc"), ("#7c3040", "#2c5450", "#5c4a34"), ("#f0c49c", "#f8ead0"))


@picture("nursery.jpg", 440, 330)
def nursery(sheet):
    """A boat of paper under a smiling hill."""
    sky(sheet, "#bfe0e4", "#fbf0d8", clouds=5)
    sun(sheet, 0.8, 0.24, 0.06, "#ffd970")
    hills(sheet, 0.5, 0.64, "#c4dcb4", "#8fbf8a", 3, 0.08)
    water(sheet, 0.66, "#9fd4d8", "#5fa8b8", glints=70)
    sheet.polygon([(130, 230), (310, 230), (276, 276), (164, 276)], "#fdf8ee")
    sheet.polygon([(220, 150), (220, 230), (150, 230)], "#f6e4d4")
    sheet.polygon([(220, 150), (220, 230), (290, 230)], "#e8c8b8")
    sheet.polygon([(130, 230), (164, 276), (220, 230)], "#ecdccc")
