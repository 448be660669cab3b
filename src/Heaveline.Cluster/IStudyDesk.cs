namespace Heaveline.Cluster;

/// <summary>Where machines that would help with a study ask for it: at the machine of the study.</summary>
public interface IStudyDesk : IGrainWithIntegerKey
{
    /// <summary>What the study is, for a machine that would help.</summary>
    /// <param name="machine">What it is called.</param>
    /// <param name="program">Which program it has.</param>
    Task<StudyOffer> Ask(string machine, string program);

    /// <summary>Lets a machine help, if it did the piece that was offered to the same bits.</summary>
    /// <param name="silo">Its address in the cluster.</param>
    /// <param name="machine">What it is called.</param>
    /// <param name="threads">On how many threads it does pieces.</param>
    /// <param name="answer">Its answer to the piece.</param>
    /// <returns>Why it may not; blank where it may.</returns>
    Task<string> Enter(string silo, string machine, int threads, byte[] answer);

    /// <summary>How the study stands with a machine.</summary>
    /// <param name="silo">Its address in the cluster.</param>
    Task<StudyState> State(string silo);

    /// <summary>A machine leaves.</summary>
    /// <param name="silo">Its address in the cluster.</param>
    Task Leave(string silo);
}
