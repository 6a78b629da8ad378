using FleetTrend.Records.Actions;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Installations;
using FleetTrend.Records.Sources;

namespace FleetTrend.Observations.Timelines;

/// <summary>What is recorded of one location on one day, as it is gathered.</summary>
internal sealed class Spot
{
    private static readonly List<Recorded<Finding>> NoFindings = [];
    private static readonly List<Recorded<CorrectiveAction>> NoActions = [];
    private static readonly List<Recorded<Removal>> NoRemovals = [];
    private static readonly List<Recorded<Installation>> NoInstallations = [];
    private List<Recorded<Finding>>? findings;
    private List<Recorded<CorrectiveAction>>? actions;
    private List<Recorded<Removal>>? removals;
    private List<Recorded<Installation>>? installations;

    public List<RecordKey> Examined { get; } = new(1);

    public List<Recorded<Finding>> Findings => findings ??= [];

    public List<Recorded<CorrectiveAction>> Actions => actions ??= [];

    public List<Recorded<Removal>> Removals => removals ??= [];

    public List<Recorded<Installation>> Installations => installations ??= [];

    public List<Recorded<Finding>> FindingsOrNone => findings ?? NoFindings;

    public List<Recorded<CorrectiveAction>> ActionsOrNone => actions ?? NoActions;

    public List<Recorded<Removal>> RemovalsOrNone => removals ?? NoRemovals;

    public List<Recorded<Installation>> InstallationsOrNone => installations ?? NoInstallations;
}
