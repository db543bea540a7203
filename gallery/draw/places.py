"""Landscapes: the customers' photographs and watercolours."""

from album import picture
from land import birds, boat, fields, flowers, grass, ground, hills, house, ridge, sky, stars, sun, water
from svg import mix, smooth
from trees import bare, birch, broad, conifer, poplar, willow


def chapel(sheet, light, wall, roof, glow):
    """A chapel on a hill among orchard trees."""
    w, h = sheet.w, sheet.h
    ground(sheet, [(x, h * 0.74 - 50 * w / 400 * (1 - ((x - w * 0.5) / (w * 0.6)) ** 2)) for x in range(-20, w + 41, 20)],
           sheet.gradient(mix(light, "#5f7f45", 0.6), "#3f5a34"))
    x, y, s = w * 0.5, h * 0.66, w * 0.26
    sheet.rect(x - s * 0.5, y - s * 0.62, s, s * 0.66, sheet.gradient(wall, mix(wall, "#3a3040", 0.25), x=1, y=0))
    sheet.polygon([(x - s * 0.56, y - s * 0.6), (x - s * 0.36, y - s), (x + s * 0.36, y - s), (x + s * 0.56, y - s * 0.6)], roof)
    sheet.rect(x - s * 0.14, y - s * 1.34, s * 0.28, s * 0.7, wall)
    sheet.polygon([(x - s * 0.18, y - s * 1.32), (x, y - s * 1.92), (x + s * 0.18, y - s * 1.32)], roof)
    for dx in (-0.32, 0.32):
        sheet.path(f"M{x + (dx - 0.06) * s:.1f} {y - s * 0.1:.1f}v{-s * 0.26:.1f}a{s * 0.06:.1f} {s * 0.06:.1f} 0 0 1 {s * 0.12:.1f} 0v{s * 0.26:.1f}Z", glow)
    sheet.path(f"M{x - 0.1 * s:.1f} {y + s * 0.04:.1f}v{-s * 0.3:.1f}a{s * 0.1:.1f} {s * 0.1:.1f} 0 0 1 {s * 0.2:.1f} 0v{s * 0.3:.1f}Z", mix(roof, "#2a1a10", 0.5))
    sheet.circle(x, y - s * 1.1, s * 0.07, glow)
    blossom = (mix(light, "#f3c9cf", 0.75), "#fff4f1")
    for i, (tx, ty, size) in enumerate(((0.08, 0.76, 0.2), (0.25, 0.72, 0.15), (0.76, 0.72, 0.15), (0.92, 0.77, 0.21), (0.16, 0.9, 0.26), (0.86, 0.93, 0.28))):
        broad(sheet, tx * w, ty * h, size * h, blossom)
    grass(sheet, 0.8, (mix(light, "#6f8f4f", 0.7), "#4f7040", "#87a060"), 240, 0.04)
    flowers(sheet, 0.84, ("#ffffff", "#f6d8a0", "#efb7c0"), 130)


@picture("chapel-dawn.jpg", 330, 440)
def chapel_dawn(sheet):
    sky(sheet, "#8f9cc4", "#d9b6c4", "#f8d9b4", clouds=4, cloud="#fbe3d8")
    sun(sheet, 0.22, 0.46, 0.045, "#ffdf9c")
    hills(sheet, 0.5, 0.62, "#b8b2cc", "#7d93a0", 3)
    chapel(sheet, "#f7d9c0", "#f4e6da", "#9a6a5c", "#ffe3a1")


@picture("chapel-noon.jpg", 420, 525)
def chapel_noon(sheet):
    sky(sheet, "#5f9fd6", "#a9d0ea", "#e4f1f4", clouds=6)
    hills(sheet, 0.5, 0.62, "#a9c6d2", "#6d9a86", 3)
    birds(sheet, 6, area=(0.1, 0.2, 0.4, 0.4))
    chapel(sheet, "#dff0c8", "#fbf7ee", "#a85f48", "#5c7d94")


@picture("chapel-dusk.jpg", 330, 440)
def chapel_dusk(sheet):
    sky(sheet, "#2f3a68", "#7d5c8c", "#e39a86", clouds=3, cloud="#c08aa0")
    stars(sheet, 50, 0.3)
    hills(sheet, 0.5, 0.62, "#8a6a90", "#4a4f70", 3)
    chapel(sheet, "#7c6a92", "#b9a6b4", "#4d3a50", "#ffd27a")
    sheet.all("#34305c", opacity=0.22)


TREES = {
    "oak": (lambda s, x, y, h: broad(s, x, y, h, ("#2f4a26", "#86a54c")), ("#bcd7e6", "#eef3e4"), ("#9cb46a", "#7f9b52")),
    "birch": (lambda s, x, y, h: birch(s, x, y, h, ("#7d8f3a", "#d9cf68")), ("#cfe2ea", "#f5f0dc"), ("#c2b878", "#a89c5c")),
    "spruce": (lambda s, x, y, h: conifer(s, x, y, h, h * 0.26, ("#1f3d38", "#4f7f6a")), ("#b4c4d6", "#eceff4"), ("#eef2f6", "#cdd8e4")),
    "willow": (lambda s, x, y, h: willow(s, x, y, h, ("#6c8a45", "#b3c66c")), ("#d7e6dc", "#f4f4e0"), ("#8fb0a8", "#6d948e")),
    "cherry": (lambda s, x, y, h: broad(s, x, y, h, ("#d88a9c", "#fdeef0"), "#5a3d3a"), ("#b9d6ea", "#f6ecec"), ("#a9bf72", "#8ba75c")),
    "maple": (lambda s, x, y, h: broad(s, x, y, h, ("#9a2f1c", "#ef9a3c")), ("#d5dfe2", "#f7ead2"), ("#c79a58", "#a97c42")),
    "poplar": (lambda s, x, y, h: poplar(s, x, y, h, ("#56702c", "#c2c45a")), ("#a9cbe2", "#f3efd9"), ("#cdb76a", "#b39a52")),
    "winter": (lambda s, x, y, h: bare(s, x, y, h * 0.24, 1.57, h * 0.04, "#4a4048"), ("#98a4bd", "#f0dcd0"), ("#f1f2f6", "#cfd5e2")),
    "apple": (lambda s, x, y, h: broad(s, x, y, h * 0.9, ("#37552b", "#93ab54")), ("#c4dbe0", "#f7efd8"), ("#a3b566", "#86994e")),
}


def tree(name):
    def draw(sheet):
        grow, air, land = TREES[name]
        sky(sheet, *air, clouds=3)
        hills(sheet, 0.62, 0.7, mix(air[0], land[1], 0.35), mix(air[0], land[1], 0.75), 2, 0.05)
        ground(sheet, ridge(sheet, sheet.h * 0.8, sheet.h * 0.03), sheet.gradient(*land))
        grass(sheet, 0.82, (land[1], mix(land[1], "#2f3a20", 0.3), land[0]), 130, 0.04)
        sheet.ellipse(sheet.w * 0.5, sheet.h * 0.85, sheet.w * 0.28, sheet.h * 0.018, mix(land[1], "#1c2418", 0.55), opacity=0.6)
        grow(sheet, sheet.w * 0.5, sheet.h * 0.85, sheet.h * 0.62)
        if name == "apple":
            for _ in range(30):
                x, y = sheet.chance.uniform(0.3, 0.7) * sheet.w, sheet.chance.uniform(0.4, 0.56) * sheet.h
                sheet.circle(x, y, sheet.w * 0.016, sheet.chance.choice(("#c5372c", "#dd6a3a")))
        sheet.texture("#5a4a30", 0.1, 0.5)
    return draw


for tree_name in TREES:
    picture(f"tree-{tree_name}.jpg", 260, 340)(tree(tree_name))


@picture("estuary-morning.jpg", 640, 300)
def estuary_morning(sheet):
    sky(sheet, "#9fb9d4", "#f2d3c0", "#fbe6c4", clouds=4, cloud="#fdf0e4")
    sun(sheet, 0.7, 0.38, 0.02, "#ffe2a0")
    hills(sheet, 0.42, 0.52, "#c7bfcb", "#7f95a6", 4, 0.06)
    water(sheet, 0.54, "#e7cfc0", "#7596aa", "#fff3dc", 110, at=0.7)
    boat(sheet, 180, 205, 44, "#5b3c34", "#f6efe2")
    boat(sheet, 430, 186, 24, "#33475a", "#e9d9c4")


@picture("estuary-noon.jpg", 640, 300)
def estuary_noon(sheet):
    sky(sheet, "#4f90c8", "#9cc8e6", "#def0f2", clouds=7)
    hills(sheet, 0.44, 0.54, "#9dbfcc", "#4d7d6c", 4, 0.06)
    water(sheet, 0.55, "#9fcfdb", "#2f6f92", "#ffffff", 120)
    boat(sheet, 330, 215, 52, "#9a3f34", "#fdfaf2")
    boat(sheet, 520, 184, 26, "#2c5068", "#fff7e0")
    boat(sheet, 90, 178, 20, "#3a3a48", "#f2e6cc")


@picture("estuary-evening.jpg", 640, 300)
def estuary_evening(sheet):
    sky(sheet, "#3a4474", "#a86a84", "#f3a86c", clouds=5, cloud="#d98c84")
    sun(sheet, 0.32, 0.49, 0.024, "#ffc870")
    hills(sheet, 0.46, 0.54, "#94688a", "#3d4264", 4, 0.06)
    water(sheet, 0.55, "#e79c74", "#3b3f68", "#ffd9a0", 130, at=0.32)
    boat(sheet, 470, 212, 46, "#241f2e", "#4a3b50")
    birds(sheet, 8, "#2a2438", (0.5, 0.15, 0.9, 0.35))


@picture("ridgeway.jpg", 760, 320)
def ridgeway(sheet):
    """A long view that the customer wants cropped."""
    sky(sheet, "#6f9cc4", "#bcd6e4", "#f4ead2", clouds=8)
    sun(sheet, 0.85, 0.3, 0.02, "#fff0c0")
    hills(sheet, 0.42, 0.78, "#b7c8d6", "#5d7a4c", 6, 0.1)
    for i in range(26):
        x = sheet.chance.uniform(0, sheet.w)
        broad(sheet, x, sheet.h * (0.86 + 0.06 * sheet.chance.random()), sheet.h * 0.16, ("#33502c", "#7f9a4a"))
    fields(sheet, 0.9, ("#8fa257", "#a9b866", "#7f944c"))
    sheet.path("M286 320C330 262 424 246 470 214S556 180 596 140L599 142C566 190 500 196 478 220S370 270 326 320Z", "#eadcb8")


@picture("abbey-arch.jpg", 300, 420)
def abbey_arch(sheet):
    sky(sheet, "#7ea4c8", "#cfdfe6", "#f6ead4", clouds=4)
    hills(sheet, 0.5, 0.66, "#b4c3c6", "#7b9468", 3)
    stone = sheet.gradient("#d9c9ac", "#a8957c", x=1, y=0)
    sheet.add(f'<path fill-rule="evenodd" fill="{stone}" d="M40 380V90L150 34L260 90V380ZM96 380V210A54 70 0 0 1 204 210V380Z"/>')
    for row in range(17):
        y = 92 + row * 17
        sheet.line(f"M40 {y}H94M206 {y}H260" if y > 150 else f"M44 {y}H256", "#8f7d66", 0.8, opacity=0.5)
    sheet.ring(150, 104, 24, "#8b7a64", 6)
    for i in range(6):
        sheet.begin(transform=f"rotate({i * 60} 150 104)")
        sheet.ellipse(150, 92, 4, 9, "#5f86a8")
        sheet.end()
    grass(sheet, 0.86, ("#6d8c48", "#4f6f38", "#93aa5c"), 260, 0.06)
    flowers(sheet, 0.9, ("#c0392b", "#f2d060", "#ffffff"), 70)
    sheet.texture("#5a4630", 0.14, 0.4)


@picture("abbey-cloister.jpg", 300, 420)
def abbey_cloister(sheet):
    sheet.all(sheet.gradient("#cbb894", "#8a7558"))
    for i in range(5):
        s = 1 - i * 0.19
        x, top, wide = 150, 210 - 190 * s, 250 * s
        tone = mix("#b9a481", "#efe4c8", i / 5)
        d = f"M{x - wide / 2:.0f} {420 - (1 - s) * 120:.0f}V{top + wide * 0.6:.0f}A{wide / 2:.0f} {wide * 0.56:.0f} 0 0 1 {x + wide / 2:.0f} {top + wide * 0.6:.0f}V{420 - (1 - s) * 120:.0f}Z"
        sheet.path(d, tone, stroke=mix(tone, "#4a3824", 0.5), stroke_width=f"{7 * s:.1f}")
    sheet.path("M120 325V225A30 34 0 0 1 180 225V325Z", sheet.gradient("#9cc4dc", "#dbe8c4", "#7f9f58"))
    for i in range(9):
        sheet.polygon([(150 + (i - 4.5) * 12, 322), (150 + (i - 3.5) * 12, 322), (150 + (i - 3.5) * 56, 420), (150 + (i - 4.5) * 56, 420)],
                      ("#c7b48e", "#a48f6c")[i % 2], opacity=0.7)
    for i in range(3):
        sheet.polygon([(20 + i * 6, 420), (70 + i * 22, 340 - i * 8), (104 + i * 16, 340 - i * 8), (86 + i * 10, 420)], "#fff3cf", opacity=0.3)
    sheet.texture("#4a3620", 0.16, 0.35)


@picture("abbey-tower.jpg", 300, 420)
def abbey_tower(sheet):
    sky(sheet, "#46517e", "#c98a8c", "#f4c894", clouds=4, cloud="#e8b4a4")
    sun(sheet, 0.24, 0.62, 0.05, "#ffd890")
    hills(sheet, 0.66, 0.78, "#a8848c", "#56506a", 3)
    stone = sheet.gradient("#8f7a74", "#4f4654", x=1, y=0)
    sheet.rect(120, 90, 92, 300, stone)
    for i in range(5):
        sheet.rect(116 + i * 21, 74, 14, 22, stone)
    for y in (120, 200):
        for x in (140, 172):
            sheet.path(f"M{x} {y + 46}v-28a10 12 0 0 1 20 0v28Z", "#ffd78a" if y == 200 else "#2f2a3c")
    sheet.polygon([(212, 390), (212, 270), (300, 300), (300, 390)], sheet.gradient("#6d5c62", "#3f3848", x=1, y=0))
    birds(sheet, 9, "#2c2438", (0.1, 0.1, 0.9, 0.4))
    ground(sheet, ridge(sheet, 386, 14), sheet.gradient("#4c5640", "#2a3028"))
    bare(sheet, 52, 392, 54, 1.57, 8, "#2c2630")
    sheet.texture("#2a2030", 0.12, 0.5)


def farm(sheet, air, land, hue):
    sky(sheet, *air, clouds=3)
    hills(sheet, 0.44, 0.56, mix(air[0], hue, 0.3), mix(hue, "#304030", 0.4), 3)
    fields(sheet, 0.58, land)


SQUARES = {
    "lavender": lambda s: (farm(s, ("#9cb4dc", "#f0e2ec"), ("#7d8a5c", "#8a72b4", "#6d5a9c", "#a58cc8"), "#8f86b0"), house(s, 150, 176, 50, "#f0e0c4", "#b06a4c")),
    "wheat": lambda s: (farm(s, ("#6fa8d8", "#eaf2ee"), ("#b0924a", "#e6c66c", "#d3ae54", "#f0d888"), "#a9b070"), broad(s, 70, 178, 70, ("#3f5a2c", "#8faa50"))),
    "pond": lambda s: (sky(s, "#a8cbd8", "#f0eed8", clouds=3), hills(s, 0.4, 0.5, "#a8bfae", "#557a52", 3), water(s, 0.52, "#b8d2c4", "#3f6f6c"), willow(s, 220, 190, 130, ("#5a7a3c", "#a9c060"))),
    "snow": lambda s: (sky(s, "#8ea2c4", "#f2dcd8"), hills(s, 0.42, 0.8, "#c4cce0", "#f4f6fa", 4), conifer(s, 70, 240, 110, 32, ("#24423c", "#5a8a74")), conifer(s, 120, 250, 80, 24, ("#24423c", "#5a8a74")), house(s, 176, 236, 60, "#8a4a3a", "#f6f8fc")),
    "night": lambda s: (sky(s, "#141c40", "#33487c", "#6f7ca4"), stars(s, 90), s.circle(210, 66, 22, "#f8f0d0"), hills(s, 0.62, 0.8, "#39507c", "#141e38", 4), house(s, 80, 250, 70, "#2a3048", "#161c30", "#ffd070")),
    "poppies": lambda s: (sky(s, "#74aadc", "#eef4f0", clouds=5), hills(s, 0.5, 0.58, "#a3bcb0", "#6d8f50", 3), ground(s, ridge(s, 178, 6), s.gradient("#8fa850", "#4c6c30")), grass(s, 0.62, ("#5a7c38", "#86a04c"), 220, 0.06), flowers(s, 0.62, ("#d2332a", "#e8543a", "#b8241f"), 130, 0.02)),
    "shore": lambda s: (sky(s, "#8fc0d8", "#f6ecd8", clouds=3), water(s, 0.46, "#8fc8cc", "#3c8c9c"), ground(s, ridge(s, 230, 10), s.gradient("#f0dcb0", "#d9bc84")), boat(s, 190, 150, 34, "#34506c", "#fbf4e4"), boat(s, 80, 142, 18, "#803c34", "#f4e8d0")),
    "mist": lambda s: (sky(s, "#c9d2d4", "#eeeae2"), hills(s, 0.36, 0.9, "#cfd6d6", "#3f5f5a", 7, 0.1)),
    "canyon": lambda s: (sky(s, "#6fa0c8", "#f6dcb4"), hills(s, 0.4, 0.86, "#dba884", "#8c3c24", 6, 0.12)),
    "tulips": lambda s: (farm(s, ("#9fc8e6", "#f2f6f0"), ("#5f8a4a", "#d8433c", "#f2c040", "#e88aa0", "#5f8a4a"), "#86a890"), poplar(s, 60, 176, 90, ("#4a6a34", "#a0b458")), poplar(s, 84, 172, 76, ("#4a6a34", "#a0b458"))),
    "island": lambda s: (sky(s, "#f0a070", "#f8d49c", "#fcecc8"), sun(s, 0.5, 0.42, 0.05, "#fff0b0"), hills(s, 0.5, 0.54, "#c08078", "#6a4a60", 2, 0.08), water(s, 0.56, "#f4b888", "#7a5478", "#fff0d0", 110, at=0.5)),
    "vineyard": lambda s: (farm(s, ("#a8c0d8", "#f6ead0"), ("#b09a60", "#5f7f3c", "#b09a60", "#7a9448"), "#8aa070"), house(s, 190, 170, 44, "#f2e2c0", "#a45a40"), conifer(s, 180, 172, 60, 9, ("#2c4a34", "#5a7c54"))),
    "birches": lambda s: (sky(s, "#e8d8b4", "#f4ecd8"), hills(s, 0.66, 0.76, "#d4c08c", "#a08848", 2), [birch(s, x, 270 + x % 3 * 4, 230 + x % 5 * 8, ("#b8862c", "#f0c850")) for x in (30, 96, 150, 212, 274)]),
    "fjord": lambda s: (sky(s, "#7f9cb8", "#dce6ea", clouds=4), hills(s, 0.3, 0.5, "#a8b8c8", "#344c5c", 4, 0.26), water(s, 0.6, "#8fa8b8", "#2c4858")),
    "dunes": lambda s: (sky(s, "#9cc0dc", "#f8ecd8"), hills(s, 0.5, 0.9, "#f2dcac", "#c8985c", 4, 0.1), grass(s, 0.6, ("#7f8a50", "#a0a468"), 70, 0.09)),
    "storm": lambda s: (sky(s, "#2c3440", "#5c6874", "#c4b48c", clouds=9, cloud="#4a545e"), hills(s, 0.6, 0.7, "#7c7c68", "#3c4430", 3), fields(s, 0.72, ("#8a8048", "#c0a850", "#a48c40")), bare(s, 210, 240, 36, 1.57, 6, "#1c1c1c")),
}


def square(name):
    def draw(sheet):
        SQUARES[name](sheet)
        sheet.texture("#403020", 0.1, 0.6)
        sheet.vignette(0.22)
    return draw


for square_name in SQUARES:
    picture(f"square-{square_name}.jpg", 300, 300)(square(square_name))
