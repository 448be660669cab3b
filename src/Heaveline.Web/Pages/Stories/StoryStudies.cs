using Heaveline.Studies;
using Heaveline.Web.Studying;

namespace Heaveline.Web.Pages.Stories;

/// <summary>The studies behind the story: the passes side by side, the causes, the price.</summary>
internal static class StoryStudies
{
    // One story, and that of a file changed since.
    private const int Capacity = 4;

    /// <summary>The passes of its cars side by side.</summary>
    public static PageStudy<CompareAsked, CompareAnswer, CompareAnswer> Drives(StudyQueue queue) =>
        new(CompareStudy.Run, answer => answer, queue, Capacity);

    /// <summary>Why the loaded one pitches.</summary>
    public static PageStudy<WhyAsked, WhyAnswer, WhyAnswer> Causes(StudyQueue queue) => new(WhyStudy.Run, answer => answer, queue, Capacity);

    /// <summary>What the cure costs elsewhere.</summary>
    public static PageStudy<CostAsked, CostAnswer, CostAnswer> Price(StudyQueue queue) => new(CostStudy.Run, answer => answer, queue, Capacity);

    /// <summary>A question about the cars of the story.</summary>
    /// <param name="cars">The cars; null where there are none.</param>
    /// <param name="asked">What is asked of them.</param>
    public static AskedReading<TAsked> Reading<TAsked>(StoryCars? cars, Func<StoryCars, TAsked> asked)
        where TAsked : class => new()
        {
            Asked = cars is null ? null : asked(cars),
            Objections = cars is null ? [new Objection(Choices.Car.Name, "The saloon of the story is not at hand.", false) { IsMissing = true }] : [],
            Key = cars?.Key ?? "",
        };
}
