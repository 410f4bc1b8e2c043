"""The package from outside: python -m unittest discover crates/python/tests"""

import csv
import os
import pathlib
import subprocess
import tempfile
import unittest

import pyarrow
import wirelore

DEMO = pathlib.Path(__file__).parents[3] / "schema" / "demo"


class Wheels(unittest.TestCase):
    """A description and a recording of a few lines."""

    def setUp(self):
        self.folder = tempfile.TemporaryDirectory()
        self.addCleanup(self.folder.cleanup)
        here = pathlib.Path(self.folder.name)
        self.van, self.drive = here / "van.lore", here / "drive.csv"
        self.van.write_text(
            "network drive can 500 kbit/s\n"
            "frame wheel_speeds on drive id 0x1B4 {\n"
            "    signal front_left in bits 1.4..0.0 = raw * 0.05 km/h, absent 0x1FFF\n"
            "    signal gear in bits 2.3..2.0, states { 0 park, 1 drive }\n"
            "}\n"
        )
        self.drive.write_text("time,id,data\n1.0,0x1B4,E80301\n1.5,0x1B4,FF1F00\n2.0,0x3F0,00\n")

    def test_tables(self):
        decoded = wirelore.open(self.van).decode(self.drive)
        self.assertEqual(list(decoded), ["wheel_speeds"])
        table = decoded["wheel_speeds"]
        self.assertIsInstance(table, pyarrow.Table)
        self.assertEqual(table.column("front_left").to_pylist(), [50.0, None])
        self.assertEqual(table.column("gear").to_pylist(), ["drive", "park"])
        self.assertEqual(table.schema.field("front_left").metadata[b"unit"], b"km/h")
        self.assertEqual([time.value for time in table.column("time")], [0, 500_000_000])
        counts = dict(decoded.counts)
        self.assertEqual((counts["read"], counts["decoded"], counts["without_description"]), (3, 2, 1))
        self.assertEqual(counts.pop("read"), sum(counts.values()))

    def test_options(self):
        van = wirelore.open(self.van)
        raw = van.decode(self.drive, store="raw", signals="*.front_left", until_s=0.2)["wheel_speeds"]
        self.assertEqual(raw.column("front_left").to_pylist(), [1000])
        self.assertNotIn("gear", raw.column_names)
        miles = van.decode(self.drive, units="imperial")["wheel_speeds"]
        self.assertEqual(miles.schema.field("front_left").metadata[b"unit"], b"mph")
        states = van.decode(self.drive, states=True)["wheel_speeds"]
        self.assertEqual(states.column("front_left.state").to_pylist(), [None, "no reading"])

    def test_one_frame(self):
        van = wirelore.open(self.van)
        self.assertEqual(van.decode_frame("drive", 0x1B4, b"\xe8\x03\x01"), {"front_left": 50.0, "gear": 1})
        self.assertEqual(van.decode_frame("drive", 0x1B4, b"\xff\x1f")["front_left"], None)
        with self.assertRaisesRegex(wirelore.LoreError, "0x1B5"):
            van.decode_frame("drive", 0x1B5, b"")
        self.assertEqual((van.networks, van.frames, van.ecus), (["drive"], ["wheel_speeds"], []))
        self.assertIn('"wheel_speeds"', van.to_json())

    def test_mistakes_are_exceptions_with_their_places(self):
        self.van.write_text("network drive can 500 kbit/s\nframe a on body id 1 { }\n")
        with self.assertRaisesRegex(wirelore.LoreError, r"van\.lore:2:12"):
            wirelore.open(self.van)
        self.assertTrue(issubclass(wirelore.LoreError, ValueError))

    def test_a_recording_that_is_none(self):
        van = wirelore.open(self.van)
        with self.assertRaisesRegex(wirelore.LoreError, "nowhere.pcapng"):
            van.decode("nowhere.pcapng")
        with self.assertRaisesRegex(wirelore.LoreError, "store is"):
            van.decode(self.drive, store="everything")
        with self.assertRaisesRegex(wirelore.LoreError, "no recording"):
            van.decode()

    def test_damage_is_told(self):
        self.drive.write_text("time,id,data\n1.0,0x1B4,E80301\n1.5,0x1B4,XX\n")
        decoded = wirelore.open(self.van).decode(self.drive)
        self.assertEqual(decoded.counts["damaged"], 1)
        self.assertTrue(any("line 3" in note for note in decoded.notes), decoded.notes)


class Demo(unittest.TestCase):
    """The demo van: the same values as the command line gives."""

    def test_the_same_as_the_command(self):
        command = os.environ.get("WIRELORE_COMMAND")
        if not command:
            self.skipTest("WIRELORE_COMMAND does not name the command")
        description, drive = DEMO / "kestrel.lore", DEMO / "town-drive.pcapng"
        table = wirelore.open(description).decode(drive, signals="wheel_speeds.front_left")["wheel_speeds"]
        printed = subprocess.run(
            [command, "decode", description, drive, "--signals", "wheel_speeds.front_left", "--to", "csv"],
            check=True,
            capture_output=True,
            text=True,
        ).stdout
        values = [line["value"] for line in csv.DictReader(printed.splitlines())]
        ours = table.column("front_left").to_pylist()
        self.assertEqual([float(value) if value else None for value in values], ours)
        self.assertGreater(len(ours), 1000)


if __name__ == "__main__":
    unittest.main()
