using Heaveline.Answers;
using Heaveline.Studies;
using Heaveline.Web.Serving;
using Microsoft.AspNetCore.Http;

namespace Heaveline.Web.Studying;

/// <summary>What a study says, as a download: the answer that a page shows, or computed for it.</summary>
internal static class StudyDownload
{
    /// <summary>A file of an answer, or in words why there is none.</summary>
    /// <param name="study">The study.</param>
    /// <param name="reading">What is asked.</param>
    /// <param name="file">The file.</param>
    /// <param name="aborted">Stops the work.</param>
    public static Task<IResult> Of<TAsked, TAnswer, TView>(
        PageStudy<TAsked, TAnswer, TView> study, AskedReading<TAsked> reading, Func<TView, IResult> file, CancellationToken aborted)
        where TAsked : class
        where TAnswer : Answer
        where TView : class => Download.Answer(
            async () => reading.Asked is null
                ? Download.Refused(reading.Objections)
                : file(study.Find(reading.Key) ?? await Task.Run(() => study.Answer(reading, null, null, aborted), aborted)),
            aborted);
}
