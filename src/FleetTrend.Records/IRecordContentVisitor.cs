using FleetTrend.Records.Actions;
using FleetTrend.Records.Aircraft;
using FleetTrend.Records.Findings;
using FleetTrend.Records.Inspections;
using FleetTrend.Records.Installations;
using FleetTrend.Records.Practices;
using FleetTrend.Records.Readings;
using FleetTrend.Records.Sources;
using FleetTrend.Records.Spares;

namespace FleetTrend.Records;

/// <summary>Makes something of a record of any kind: a method per kind, so that none can be forgotten.</summary>
/// <typeparam name="T">What is made.</typeparam>
public interface IRecordContentVisitor<out T>
{
    /// <summary>Of an aircraft.</summary>
    T Visit(Airframe airframe);

    /// <summary>Of a meter reading.</summary>
    T Visit(MeterReading reading);

    /// <summary>Of a meter change.</summary>
    T Visit(MeterChange change);

    /// <summary>Of a part that went in.</summary>
    T Visit(Installation installation);

    /// <summary>Of a part that came out.</summary>
    T Visit(Removal removal);

    /// <summary>Of an inspection.</summary>
    T Visit(Inspection inspection);

    /// <summary>Of a finding.</summary>
    T Visit(Finding finding);

    /// <summary>Of an action.</summary>
    T Visit(CorrectiveAction action);

    /// <summary>Of a practice change.</summary>
    T Visit(PracticeChange change);

    /// <summary>Of a stock count.</summary>
    T Visit(StockCount count);

    /// <summary>Of a retraction.</summary>
    T Visit(Retraction retraction);
}
