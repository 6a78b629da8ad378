namespace FleetTrend.Records.Layouts;

/// <summary>
/// Layouts of common arrangements, composed from what they have: cylinders, muffler with heat shroud or straight pipes, slip or clamp
/// joints. An operator whose aircraft differ adds a layout of his own. Arrangements are common practice, no source.
/// </summary>
public static class ShippedLayouts
{
    private static readonly string[] Banks = ["left", "right"];

    /// <summary>All of them, by name.</summary>
    public static IReadOnlyList<Layout> All { get; } =
    [
        Compose(4, hasMuffler: true, isSlip: false),
        Compose(4, hasMuffler: true, isSlip: true),
        Compose(4, hasMuffler: false, isSlip: false),
        Compose(4, hasMuffler: false, isSlip: true),
        Compose(6, hasMuffler: true, isSlip: false),
        Compose(6, hasMuffler: true, isSlip: true),
        Compose(6, hasMuffler: false, isSlip: false),
        Compose(6, hasMuffler: false, isSlip: true),
    ];

    private static Layout Compose(int cylinders, bool hasMuffler, bool isSlip)
    {
        var count = cylinders == 4 ? "four" : "six";
        var name = $"{count}-cylinder-{(hasMuffler ? "muffler" : "straight")}-{(isSlip ? "slip" : "clamp")}";
        var title = $"{(cylinders == 4 ? "Four" : "Six")} cylinders, {(hasMuffler ? "muffler with heat shroud" : "straight pipes")}, "
            + $"{(isSlip ? "slip" : "clamp")} joints";
        return new Layout(name, title,
        [
            .. Enumerable.Range(1, cylinders).SelectMany(Stack),
            .. Banks.SelectMany(bank => Collector(bank, hasMuffler, isSlip)),
            .. hasMuffler ? MufflerAndShroud() : [],
            .. Enumerable.Range(1, cylinders).SelectMany(Intake),
        ]);
    }

    private static IEnumerable<Location> Stack(int cylinder)
    {
        yield return At($"exhaust/cyl-{cylinder}/port-face", "port-face");
        yield return At($"exhaust/cyl-{cylinder}/gasket", "gasket");
        yield return At($"exhaust/cyl-{cylinder}/flange-weld", "flange-weld");
        yield return At($"exhaust/cyl-{cylinder}/stack-weld", "stack-weld");
        yield return At($"exhaust/cyl-{cylinder}/probe", "probe");
    }

    /// <summary>Where the stacks of one bank come together, and how they are joined to what follows.</summary>
    private static IEnumerable<Location> Collector(string bank, bool hasMuffler, bool isSlip)
    {
        yield return At($"exhaust/{bank}/y-weld", "y-weld");
        if (isSlip)
        {
            yield return At($"exhaust/{bank}/slip-joint", "slip-joint");
        }
        else
        {
            yield return At($"exhaust/{bank}/clamp", "clamp");
            yield return At($"exhaust/{bank}/clamp-bolt", "clamp-bolt");
        }

        yield return At($"exhaust/{bank}/hanger", "hanger");
        if (!hasMuffler)
        {
            yield return At($"exhaust/{bank}/tailpipe-weld", "tailpipe-weld");
        }
    }

    private static IEnumerable<Location> MufflerAndShroud() =>
    [
        At("exhaust/muffler/inlet-left", "muffler-shell", "Weld of the left inlet, with the shroud off: most shell cracks begin at inlets and seams."),
        At("exhaust/muffler/inlet-right", "muffler-shell", "Weld of the right inlet, with the shroud off: most shell cracks begin at inlets and seams."),
        At("exhaust/muffler/shell", "muffler-shell"),
        At("exhaust/muffler/baffles", "muffler-baffle"),
        At("exhaust/muffler/tailpipe-weld", "tailpipe-weld"),
        At("exhaust/muffler/hanger", "hanger"),
        At("exhaust/shroud/front-edge", "shroud-edge"),
        At("exhaust/shroud/rear-edge", "shroud-edge"),
    ];

    private static IEnumerable<Location> Intake(int cylinder)
    {
        yield return At($"induction/cyl-{cylinder}/flange", "tube-flange");
        yield return At($"induction/cyl-{cylinder}/gasket", "intake-gasket");
        yield return At($"induction/cyl-{cylinder}/tube", "tube");
        yield return At($"induction/cyl-{cylinder}/coupling", "coupling");
        yield return At($"induction/cyl-{cylinder}/coupling-clamps", "hose-clamp");
    }

    private static Location At(string path, string kind, string? lookFor = null)
    {
        var what = ShippedKinds.Get(kind);
        return new Location(path, what, lookFor ?? what.LookFor, what.JascCode);
    }
}
