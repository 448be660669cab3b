using Heaveline.Films;
using Heaveline.Web.Serving;
using Heaveline.Web.Studying;

namespace Heaveline.Web.Pages.Films;

/// <summary>The camera part behind the page, for all readers in their turn; where it is not there, what to do.</summary>
/// <param name="options">Says where it is.</param>
/// <param name="queue">Where its work waits for its turn.</param>
internal sealed class FilmDoor(ServeOptions options, StudyQueue queue)
{
    private readonly Lazy<IFilmCamera?> camera = new(options.Camera);

    /// <summary>Whether there is one.</summary>
    public bool IsThere => camera.Value is not null;

    /// <summary>What to do where there is none.</summary>
    public string Missing => options.CameraMissing;

    /// <summary>Has it do something.</summary>
    /// <param name="work">What.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="QueueFullException">Too many wait already.</exception>
    /// <exception cref="Heaveline.Quantities.NoAnswerException">The film is refused, or the part of it that follows could not be started.</exception>
    public Task<T> Run<T>(Func<IFilmCamera, T> work, CancellationToken stop) => Task.Run(() => queue.Run(() => work(camera.Value!), stop), stop);
}
