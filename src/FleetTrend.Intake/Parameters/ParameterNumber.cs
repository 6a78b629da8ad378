using System.Globalization;
using Google.Protobuf.Reflection;
using Wire = FleetTrend.Contracts.V1;

namespace FleetTrend.Intake.Parameters;

/// <summary>A number among the parameters of the trends.</summary>
/// <param name="Field">Its field in the contract; that of the trends has the same name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Meaning">What it does, in plain words, a sentence or two.</param>
/// <param name="Least">The least that is taken.</param>
/// <param name="Most">The most that is taken.</param>
/// <param name="Decimals">How many decimals it may have.</param>
public sealed record ParameterNumber(string Field, string Title, string Meaning, double Least, double Most, int Decimals)
{
    /// <summary>Whether it counts flight hours.</summary>
    public bool IsHours { get; init; }

    /// <summary>What it must be.</summary>
    public string Rule
    {
        get
        {
            var decimals = Decimals switch { 0 => "", 1 => " with at most one decimal", _ => $" with at most {Decimals} decimals" };
            return $"must be {(IsHours ? "hours" : Decimals == 0 ? "a whole number" : "a number")} from {Words(Least)} to {Words(Most)}{decimals}";
        }
    }

    private FieldDescriptor Descriptor => Wire.Parameters.Descriptor.FindFieldByName(Field);

    /// <summary>Its value among those parameters; null where it is absent.</summary>
    public double? In(Wire.Parameters parameters) => Descriptor.Accessor.HasValue(parameters)
        ? Convert.ToDouble(Descriptor.Accessor.GetValue(parameters), CultureInfo.InvariantCulture)
        : null;

    /// <summary>Sets it among those parameters.</summary>
    /// <param name="parameters">The parameters.</param>
    /// <param name="value">The value; null to leave it out.</param>
    /// <exception cref="OverflowException">It counts, and so many cannot be counted.</exception>
    public void Set(Wire.Parameters parameters, double? value)
    {
        if (value is not { } number)
            Descriptor.Accessor.Clear(parameters);
        else if (Descriptor.FieldType == FieldType.Int32)
            Descriptor.Accessor.SetValue(parameters, Convert.ToInt32(number));
        else
            Descriptor.Accessor.SetValue(parameters, number);
    }

    private static string Words(double value) => value.ToString("#,0.###", CultureInfo.InvariantCulture);
}
