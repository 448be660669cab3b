using Heaveline.Figures;
using Heaveline.Studies;

namespace Heaveline.Web.Pages.Drives;

/// <summary>What the page shows of a drive held against the one before the change.</summary>
/// <param name="Answer">The answer.</param>
/// <param name="Dots">Every pass against speed.</param>
/// <param name="Power">What so many passes would show.</param>
public sealed record ProofView(ProveAnswer Answer, Figure Dots, Figure Power)
{
    /// <summary>The view of an answer.</summary>
    public static ProofView Of(ProveAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return new ProofView(answer, answer.Figure(ProveAnswer.Dots), answer.Figure(ProveAnswer.Power));
    }
}
