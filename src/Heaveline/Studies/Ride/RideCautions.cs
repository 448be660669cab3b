using Heaveline.Rides;

namespace Heaveline.Studies;

/// <summary>Why one response of a ride must be doubted, all of it.</summary>
internal static class RideCautions
{
    public static IEnumerable<RandomCaution> Of(RandomResponse response) =>
        response.OutcomeSentence.Length > 0 ? response.Cautions.Append(new RandomCaution("outcome", response.OutcomeSentence)) : response.Cautions;
}
