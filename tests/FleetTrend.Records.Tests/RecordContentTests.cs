using System.Reflection;
using System.Runtime.CompilerServices;

namespace FleetTrend.Records.Tests;

/// <summary>The kinds of records are a closed set: whoever adds one is led to every place that has to know it.</summary>
public sealed class RecordContentTests
{
    private static readonly Type[] Contents =
        [.. typeof(RecordContent).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(RecordContent)))];

    [Fact]
    public void No_other_project_can_add_a_kind() => Assert.All(
        typeof(RecordContent).GetConstructors(BindingFlags.Instance | BindingFlags.NonPublic | BindingFlags.Public),
        constructor => Assert.True(constructor.IsFamilyAndAssembly || IsCopy(constructor)));

    [Fact]
    public void Every_kind_is_one_sealed_type_and_every_type_one_kind()
    {
        Assert.All(Contents, type => Assert.True(type.IsSealed, type.Name));
        Assert.Equal(Enum.GetValues<RecordKind>().Order(), Contents.Select(KindOf).Order());
    }

    [Fact]
    public void A_visitor_has_a_method_for_every_type() => Assert.Equal(
        Contents.Select(type => type.Name).Order(StringComparer.Ordinal),
        typeof(IRecordContentVisitor<int>).GetMethods().Select(m => m.GetParameters()[0].ParameterType.Name).Order(StringComparer.Ordinal));

    /// <summary>A record's own copy needs an instance to copy, and makes none of another type.</summary>
    private static bool IsCopy(ConstructorInfo constructor) =>
        constructor.IsFamily && constructor.GetParameters() is [{ } one] && one.ParameterType == typeof(RecordContent);

    private static RecordKind KindOf(Type type) => ((RecordContent)RuntimeHelpers.GetUninitializedObject(type)).RecordKind;
}
