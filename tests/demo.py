"""The demo shop's file -> a shop of plain settings with its stock, which its patterns take beads from."""

from __future__ import annotations

from pathlib import Path

from sitegen.model.shop import Shop
from sitegen.read.shop_file import read_shop_file

_FILE = Path(__file__).parents[1] / "content" / "shop.yaml"

DEMO_SHOP = Shop(stock=read_shop_file(_FILE.read_text(encoding="utf-8"), _FILE.name)[0].stock)
