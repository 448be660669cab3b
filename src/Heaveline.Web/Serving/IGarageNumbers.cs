using Heaveline.Files.Garages;

namespace Heaveline.Web.Serving;

/// <summary>Finds the cars of a garage by the numbers that they have standing; whoever hosts the pages gives it.</summary>
public interface IGarageNumbers
{
    /// <summary>Looks for what is typed.</summary>
    /// <param name="garage">The garage.</param>
    /// <param name="typed">Words, and numbers between commas ("saloon, ratio at most 1").</param>
    /// <param name="cancellation">Stops it.</param>
    /// <returns>What was found; null where no number is asked for.</returns>
    NumbersFound? Find(Garage garage, string typed, CancellationToken cancellation = default);
}
