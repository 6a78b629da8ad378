using CsCheck;
using FleetTrend.Contracts.V1;
using FleetTrend.Intake.Rules;
using Google.Rpc;

namespace FleetTrend.Intake.Tests.Rules;

/// <summary>Whatever a message holds, the answer is a record or a refusal that names a field, a rule and a reason; never an exception.</summary>
public sealed class HostileMessageTests
{
    [Fact]
    public void Any_record_is_parsed_or_refused() => Gen.Int.Sample(
        seed =>
        {
            var record = new HostileMessages(seed).Make<Record>();
            var parsed = RecordRules.Parse(record, Valid.Known());
            if (parsed.Content is not null)
            {
                Assert.Empty(parsed.Refusals);
                Assert.Equal(32, ContentHash.Compute(record).Length);
                return;
            }

            foreach (var refusal in parsed.Refusals)
            {
                Assert.NotEqual("", refusal.Field);
                Assert.NotEqual("", refusal.Rule);
                Assert.Contains(refusal.Reason, Reasons.All);
            }

            Assert.Equal(Math.Min(parsed.Refusals.Count, RefusalStatus.MostListed), RefusalStatus.Build(parsed.Refusals)
                .GetDetail<BadRequest>().FieldViolations.Count);
        },
        iter: 20_000);

    [Fact]
    public void Any_kind_layout_type_group_and_source_is_parsed_or_refused() => Gen.Int.Sample(
        seed =>
        {
            var messages = new HostileMessages(seed);
            LayoutRules.Parse(messages.Make<LocationKind>(), out _);
            LayoutRules.Parse(messages.Make<Layout>(), Valid.Kinds, out _);
            LayoutRules.Parse(messages.Make<TypeGroup>(), out _);
            SourceRules.Check(messages.Make<Source>());
            ReportRules.Recipients(messages.Make<SetRecipientsRequest>());
            FlagAnswerRules.Closing(messages.Make<CloseFlagRequest>());
        },
        iter: 2_000);
}
