"""Sixteen networks of a furnace's kind, small ones by hand and the whole house in several states.

Each gives the network, its frequency, the voltages and currents to compare, and what is laid in beside it
(meters, pushed current). Currents are of branches; two-ports give both windings.
"""

from dataclasses import dataclass, field

from assistant.rig.circuit.motor import Induction
from assistant.rig.circuit.network import OPEN, Network
from assistant.rig.circuit.transformer import Transformer
from assistant.rig.electrics import METER_FARAD, METER_HIGH_OHM, METER_LOW_OHM, Electrics
from assistant.rig.part import settings_of
from assistant.rig.parts import COMPONENTS
from assistant.rig.unit import PLAIN
from assistant.rig.wiring import winding

LOW = 1 / METER_LOW_OHM


def high(frequency=60.0):
    return 1 / METER_HIGH_OHM + 2j * 3.141592653589793 * frequency * METER_FARAD


@dataclass
class Case:
    """`motors`: two-port name -> (motor, slip); `transformers`: two-port name -> Transformer."""

    network: Network
    frequency: float = 60.0
    volts: list = field(default_factory=list)
    currents: list = field(default_factory=list)
    pairs: list = field(default_factory=list)
    motors: dict = field(default_factory=dict)
    transformers: dict = field(default_factory=dict)
    meters: list = field(default_factory=list)
    push: tuple | None = None


def relay_coil():
    """24 V behind 0.5 ohm and 2 mH on a coil of 12 ohm and 60 mH."""
    n = Network("c")
    n.branch("source", "c", "r", 0.5, 0.002, volt=24)
    n.branch("coil", "r", "c", 12, 0.06)
    return Case(n, volts=[("r", "c")], currents=["coil"])


def run_capacitor():
    """A series circuit of resistance, winding inductance and capacitor at 50 Hz."""
    n = Network("n")
    n.branch("source", "n", "l", 0.2, volt=230)
    n.branch("winding", "l", "a", 40, 0.3)
    n.branch("capacitor", "a", "n", 0.5, farad=5e-6)
    return Case(n, 50.0, volts=[("a", "n"), ("l", "a")], currents=["capacitor"])


def open_neutral():
    """240 V over two loads whose neutral is open: the legs see-saw."""
    n = Network("bar")
    n.branch("leg1", "pole", "l1", 0.03, 3e-5, volt=120)
    n.branch("leg2", "l2", "pole", 0.03, 3e-5, volt=120)
    n.branch("neutral", "pole", "bar", OPEN)
    n.branch("load1", "l1", "bar", 30)
    n.branch("load2", "l2", "bar", 10)
    return Case(n, volts=[("l1", "bar"), ("l2", "bar"), ("l1", "l2")], currents=["load1", "load2"])


def ghost():
    """500 pF of cable on a floating wire, read with 10 Mohm."""
    n = Network("c")
    n.branch("source", "c", "l", 0.1, volt=120)
    n.branch("cable", "l", "w", 1, farad=500e-12)
    return Case(n, volts=[("w", "c")], meters=[("w", "c", complex(1 / 10e6))])


def ghost_loaded():
    """The same wire read with 3 kohm."""
    case = ghost()
    case.meters = [("w", "c", complex(LOW))]
    return case


def transformer(load):
    t = Transformer(0.221, 12.0, 0.75, 0.012, 0.0006, 4.0, 5700.0)
    n = Network("c")
    n.branch("source", "n", "l", 0.1, volt=120)
    n.branch("ground", "n", "c", 0.1)
    n.two_port("transformer", ("l", "n"), ("r", "c"), t.impedances)
    n.branch("load", "r", "c", load, 0.02 if load < 100 else 0.0)
    return Case(
        n,
        volts=[("r", "c")],
        currents=["source", "load"],
        pairs=["transformer"],
        transformers={"transformer": t},
    )


def transformer_idle():
    """A 40 VA transformer with a meter's load."""
    return transformer(1e6)


def transformer_loaded():
    """The same with a coil of 14 ohm on it."""
    return transformer(14.0)


def transformer_50():
    """The same at 50 Hz."""
    case = transformer_loaded()
    case.frequency = 50.0
    return case


MOTOR = Induction(3.0, 3.3, 6.2, 3.3, 60.0, 10.0, 9.0, 1.7, 6)


def blower(slip, farad):
    n = Network("n")
    n.branch("source", "n", "l", 0.2, 1e-4, volt=120)
    n.branch("capacitor", "l", "a", 0.2, farad=farad)
    n.two_port("motor", ("l", "n"), ("a", "n"), winding(MOTOR, slip))
    return Case(
        n,
        volts=[("l", "n"), ("a", "n"), ("l", "a")],
        currents=["source", "capacitor"],
        pairs=["motor"],
        motors={"motor": (MOTOR, slip)},
    )


def blower_running():
    """A split-capacitor blower at 10 % slip."""
    return blower(0.10, 10e-6)


def blower_locked():
    """The same standing still."""
    return blower(1.0, 10e-6)


def blower_without_capacitor():
    """The same standing still with its capacitor open."""
    return blower(1.0, 1e-12)


def house(changes=(), meters=(), zoned=False, **state):
    v = settings_of(COMPONENTS)
    v.update(changes)
    e = Electrics({**PLAIN, "zone_panel": "yes" if zoned else "no", "size": 1.0}, v)
    for name, value in state.items():
        e.s[name] = value
    e.solve()
    from assistant.rig import wiring

    t = Transformer(
        v["transformer.ratio"],
        v["transformer.primary_ohm"],
        v["transformer.secondary_ohm"],
        0.012,
        0.0006,
        4.0,
        v["transformer.core_ohm"],
    )
    return Case(
        e.network,
        volts=[
            ("box.line", "box.neutral"),
            ("box.line", "ground"),
            ("box.neutral", "ground"),
            ("r", "c"),
            ("w", "c"),
            ("pressure.load", "c"),
            ("inducer.line", "inducer.neutral"),
            ("valve.hot", "valve.common"),
            ("board.rod", "cabinet"),
            ("known.line", "known.neutral"),
            ("stat.w", "stat.c"),
        ],
        currents=["breaker", "branch_neutral", "ground_wire", "control_fuse", "igniter", "valve_coil"],
        pairs=["inducer", "blower", "transformer"],
        motors={
            "inducer": (wiring.INDUCER, e.s["inducer_slip"]),
            "blower": (wiring.BLOWER, e.s["blower_slip"]),
        },
        transformers={"transformer": t},
        meters=list(meters),
    )


RUNNING = {
    "stat_w": 1.0,
    "inducer": 1.0,
    "inducer_slip": 0.1,
    "pressure": 1.0,
    "valve": 1.0,
    "coils": 3.0,
    "blower": 1.0,
    "blower_slip": 0.1,
}


def house_running():
    """The whole house with everything on."""
    return house(**RUNNING)


def house_igniting():
    """The whole house with inducer and hot igniter."""
    return house(
        stat_w=1.0, inducer=1.0, inducer_slip=0.2, pressure=1.0, igniter=1.0, igniter_ohm=31.0, coils=2.0
    )


def house_neutral_open():
    """The branch circuit's neutral is open while the blower should run."""
    return house([("branch_neutral.open", 1)], **RUNNING)


def house_service_neutral_open():
    """The house's own neutral is open."""
    return house([("service.neutral_open", 1)], **RUNNING)


def house_w_open_ghost():
    """W broken behind the wall, a 10 Mohm meter on the thermostat's W."""
    return house([("cable.w_open", 1), ("thermostat.contact_open", 1)], [("stat.w", "stat.c", high())])


def house_meter_feeds_sense():
    """A low-impedance meter laid across the open pressure switch feeds the board's input."""
    return house((), [("pressure.feed", "pressure.load", complex(LOW))], inducer=1.0, inducer_slip=0.1)


def house_no_ground():
    """The furnace's ground is off; its frame floats."""
    return house([("ground_wire.open", 1)], stat_w=1.0)


def house_motor_to_frame():
    """The blower's winding at 30 ohm to the frame."""
    return house([("blower_motor.leak_ohm", 30.0)], **RUNNING)


def house_zoned():
    """A zone panel with a transformer of its own; the two commons are apart."""
    case = house((), [("panel.c", "c", high())], zoned=True, stat_w=1.0, panel=1.0)
    case.volts += [("zone.w", "panel.c"), ("panel.w", "panel.c_out"), ("panel.r", "r"), ("panel.c", "c")]
    return case


def ohms_of_the_neutral():
    """An ohmmeter from the furnace's neutral to its ground screw, everything dead."""
    case = house(breaker=0.0, switch=0.0)
    case.frequency = 0.0
    case.volts, case.currents, case.pairs = [("box.neutral", "ground")], [], []
    case.push = ("ground", "box.neutral", 1.0)
    return case


CASES = {
    f.__name__: f
    for f in (
        relay_coil,
        run_capacitor,
        open_neutral,
        ghost,
        ghost_loaded,
        transformer_idle,
        transformer_loaded,
        transformer_50,
        blower_running,
        blower_locked,
        blower_without_capacitor,
        house_running,
        house_igniting,
        house_neutral_open,
        house_service_neutral_open,
        house_w_open_ghost,
        house_meter_feeds_sense,
        house_no_ground,
        house_motor_to_frame,
        house_zoned,
        ohms_of_the_neutral,
    )
}
