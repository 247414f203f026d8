package org.thirstline.model.engine;

/** Sees the state after every day, for tests of what the day must conserve. */
interface DayObserver {

    /**
     * Called after a day.
     *
     * @param day index of the day
     * @param state the live state. Not to be modified.
     */
    void after(int day, StandState state);
}
