@echo off
rem Starts Quietline with the JVM options that make short commands start fast.
setlocal
set "JAVA=java"
if defined JAVA_HOME set "JAVA=%JAVA_HOME%\bin\java"
"%JAVA%" -XX:TieredStopAtLevel=1 -XX:+UseSerialGC -Djava.awt.headless=true -jar "%~dp0..\quietline.jar" %*
exit /b %ERRORLEVEL%
